import { Button, Link, makeStyles, mergeClasses, Switch, tokens } from "@fluentui/react-components";
import { useEffect, useState } from "react";
import type { FailedCell, SheetHost } from "../../host/host";
import { usePane } from "../parts/pane-context";
import { reasonOf, useDeed } from "../parts/use-deed";
import { useText } from "../theme/text-styles";
import { failureOf, sheetFailure } from "./failure";
import { partsOf } from "./find-calls";

const useStyles = makeStyles({
  buttons: { display: "flex", flexWrap: "wrap", gap: tokens.spacingHorizontalS },
  failed: {
    padding: `${tokens.spacingVerticalXS} 0`,
    borderTop: `1px solid ${tokens.colorNeutralStroke2}`,
  },
});

/** What can be done for the workbook as a whole: a list of what failed, repair, a copy of values. */
export function WorkbookCare({ host }: { host: SheetHost }) {
  const styles = useStyles();
  const text = useText();
  const { busy, run } = useDeed();
  const [failed, setFailed] = useState<readonly FailedCell[]>();
  const broken = failed?.filter(({ lostLink }) => lostLink) ?? [];

  const check = () =>
    run(async () => {
      const list = await host.listFailures();
      setFailed(list);
      return list.length === 0
        ? "No Dosewright cell in this workbook fails."
        : `${cells(list.length)} with Dosewright functions fail${list.length === 1 ? "s" : ""}. The list is in the tab Working.`;
    });
  const repair = () =>
    run(async () => {
      const still = await host.relink(broken);
      setFailed(await host.listFailures());
      return still.length === 0
        ? `${cells(broken.length)} repaired.`
        : `${cells(broken.length - still.length)} repaired; ${still.length} still fail: see their messages.`;
    });
  const recalculate = () =>
    run(async () => {
      await host.recalculate();
      return "The workbook was computed again.";
    });
  const copy = () =>
    run(async () => {
      const how = await host.openValuesCopy();
      return `A copy with values in place of formulas that need Dosewright or a recent program was ${how}. This workbook is as it was.`;
    });

  return (
    <section aria-label="This workbook">
      <h3 className={text.subheading}>This workbook</h3>
      <div className={styles.buttons}>
        <Button size="small" disabled={busy} onClick={check}>
          Check this workbook
        </Button>
        <Button size="small" disabled={busy} onClick={recalculate}>
          Compute it again
        </Button>
        <Button size="small" disabled={busy || !host.can.openValuesCopy} onClick={copy}>
          Copy with values only
        </Button>
        {broken.length > 0 && (
          <Button size="small" appearance="primary" disabled={busy} onClick={repair}>
            Repair {broken.length} lost {broken.length === 1 ? "link" : "links"}
          </Button>
        )}
      </div>
      {host.can.loadWithWorkbook && <LoadWithWorkbook host={host} />}
      {failed !== undefined && (
        <>
          <p className={mergeClasses(text.paragraph, text.faint)} role="status">
            {failed.length === 0 ? "No Dosewright cell fails." : `${cells(failed.length)} to mend:`}
          </p>
          <ul className={text.list} aria-label="Cells that fail">
            {failed.map((cell) => (
              <li key={cell.address} className={styles.failed}>
                <Link as="button" onClick={() => void host.select(cell.address)}>
                  {cell.address}
                </Link>{" "}
                <strong>{cell.error}</strong>
                <p className={text.paragraph}>{reasonIn(host, cell)}</p>
              </li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}

const cells = (count: number) => (count === 1 ? "1 cell" : `${count} cells`);

/** What the host knows; else the message of the call that failed, where one of ours gave the error, or what it means. */
function reasonIn(host: SheetHost, cell: FailedCell): string {
  if (cell.reason !== undefined) return cell.reason;
  const from = cell.spilledFrom ?? cell.address;
  const [own, first] = [partsOf(cell.address), partsOf(from)];
  for (const call of host.callsAt(from)) {
    const failure = failureOf(call, own.row - first.row, own.column - first.column);
    if (failure?.code === cell.error) return `${failure.wrong} ${failure.mend}`;
  }
  const { wrong, mend } = sheetFailure(cell.error);
  return `${wrong} ${mend}`;
}

function LoadWithWorkbook({ host }: { host: SheetHost }) {
  const { say } = usePane();
  const [loads, setLoads] = useState(false);
  useEffect(() => {
    host
      .loadsWithWorkbook()
      .then(setLoads, (problem) => say({ kind: "refused", text: reasonOf(problem) }));
  }, [host, say]);
  return (
    <Switch
      label="Load the functions whenever this workbook opens"
      checked={loads}
      onChange={(_, { checked }) => {
        host.setLoadsWithWorkbook(checked).then(
          () => setLoads(checked),
          (problem) => say({ kind: "refused", text: reasonOf(problem) }),
        );
      }}
    />
  );
}
