import { Button, makeStyles, mergeClasses, tokens } from "@fluentui/react-components";
import { ArrowLeftRegular } from "@fluentui/react-icons";
import type { ReactNode } from "react";

const useStyles = makeStyles({
  wide: {
    "@container (min-width: 720px)": {
      display: "grid",
      gridTemplateColumns: "minmax(240px, 1fr) 2fr",
      columnGap: tokens.spacingHorizontalXXL,
      alignItems: "start",
    },
  },
  listBesideDetail: { "@container (max-width: 719.98px)": { display: "none" } },
  backOnlyNarrow: { "@container (min-width: 720px)": { display: "none" } },
});

interface ListAndDetailProps {
  readonly list: ReactNode;
  readonly listClass: string;
  /** What was opened from the list; undefined where nothing is. */
  readonly detail: ReactNode | undefined;
  readonly back: string;
  close(): void;
}

/** A list, and beside it what was opened from it; in a narrow pane in its place, with a way back. */
export function ListAndDetail({ list, listClass, detail, back, close }: ListAndDetailProps) {
  const styles = useStyles();
  const isOpen = detail !== undefined;
  return (
    <div className={mergeClasses(isOpen && styles.wide)}>
      <div className={mergeClasses(listClass, isOpen && styles.listBesideDetail)}>{list}</div>
      {isOpen && (
        <div>
          <Button
            size="small"
            appearance="subtle"
            icon={<ArrowLeftRegular />}
            className={styles.backOnlyNarrow}
            onClick={close}
          >
            {back}
          </Button>
          {detail}
        </div>
      )}
    </div>
  );
}
