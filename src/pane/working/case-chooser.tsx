import { Button, makeStyles, tokens } from "@fluentui/react-components";
import { ChevronLeftRegular, ChevronRightRegular } from "@fluentui/react-icons";
import type { Call } from "../../cells/observer";

const useStyles = makeStyles({
  line: {
    display: "flex",
    flexWrap: "wrap",
    alignItems: "center",
    gap: tokens.spacingHorizontalXS,
    marginBlock: tokens.spacingVerticalXS,
    fontVariantNumeric: "tabular-nums",
  },
});

interface Place {
  readonly row: number;
  readonly column: number;
}

interface CaseChooserProps extends Place {
  readonly call: Call;
  choose(place: Place): void;
}

/** Steps through the rows and columns of an answer that are computed each by itself. */
export function CaseChooser({ call, row, column, choose }: CaseChooserProps) {
  const styles = useStyles();
  if (call.by === "whole" || !Array.isArray(call.answer)) return null;
  const rows = call.answer.length;
  const columns = call.by === "cell" ? (call.answer[0]?.length ?? 1) : 1;
  return (
    <>
      {rows > 1 && (
        <div className={styles.line}>
          <Stepper what="row" at={row} of={rows} go={(next) => choose({ row: next, column })} />
        </div>
      )}
      {columns > 1 && (
        <div className={styles.line}>
          <Stepper
            what="column"
            at={column}
            of={columns}
            go={(next) => choose({ row, column: next })}
          />
        </div>
      )}
    </>
  );
}

function Stepper(props: { what: string; at: number; of: number; go: (next: number) => void }) {
  const { what, at, of, go } = props;
  return (
    <>
      <Button
        size="small"
        appearance="subtle"
        icon={<ChevronLeftRegular />}
        aria-label={`The ${what} before`}
        disabled={at === 0}
        onClick={() => go(at - 1)}
      />
      <span aria-live="polite">
        {what} {at + 1} of {of}
      </span>
      <Button
        size="small"
        appearance="subtle"
        icon={<ChevronRightRegular />}
        aria-label={`The ${what} after`}
        disabled={at === of - 1}
        onClick={() => go(at + 1)}
      />
    </>
  );
}
