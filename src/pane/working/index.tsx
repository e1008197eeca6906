import { makeStyles, mergeClasses, tokens } from "@fluentui/react-components";
import { lazy, Suspense } from "react";
import type { SheetHost } from "../../host/host";
import { NeedsSheet } from "../parts/needs-sheet";
import { usePane } from "../parts/pane-context";
import { useText } from "../theme/text-styles";
import { sheetFailure } from "./failure";
import { FailureNote } from "./failure-note";
import { findCalls } from "./find-calls";
import { useSelection } from "./use-selection";
import { WorkbookCare } from "./workbook-care";

/** Typesetting and plotting are the heaviest parts of the pane: they come when a story is told. */
const Story = lazy(() => import("./story"));

const useStyles = makeStyles({
  care: {
    marginTop: tokens.spacingVerticalXXL,
    paddingTop: tokens.spacingVerticalS,
    borderTop: `1px solid ${tokens.colorNeutralStroke2}`,
  },
});

export function Working() {
  const styles = useStyles();
  const text = useText();
  const { host } = usePane();
  return (
    <>
      <h2 className={text.hidden}>Working</h2>
      {host === undefined ? (
        <>
          <p className={text.paragraph}>
            Here stands how a cell’s number came about: the equation with its numbers put in, step
            by step, each argument and where it came from, and a picture of the result.
          </p>
          <NeedsSheet to="to see the working of a cell" />
        </>
      ) : (
        <>
          <Selected host={host} />
          <div className={styles.care}>
            <WorkbookCare host={host} />
          </div>
        </>
      )}
    </>
  );
}

/** The story of the selected cell. */
function Selected({ host }: { host: SheetHost }) {
  const text = useText();
  const { selection, computed } = useSelection(host);
  if (selection === undefined) {
    return <p className={mergeClasses(text.paragraph, text.faint)}>No cell is selected.</p>;
  }
  const { cell } = selection;
  const found = findCalls(host, cell);
  if (found !== undefined) {
    return (
      <Suspense fallback={<p className={text.faint}>Telling…</p>}>
        <Story key={`${cell.address} ${computed}`} host={host} cell={cell} found={found} />
      </Suspense>
    );
  }
  const isOurs = cell.formula.toUpperCase().includes(`${host.namespace.toUpperCase()}.`);
  const error = typeof cell.value === "string" && /^#[A-Z/0!?]+/.test(cell.value) ? cell.value : "";
  return (
    <>
      <h3 className={text.heading}>{cell.address}</h3>
      {isOurs && error !== "" && <FailureNote failure={sheetFailure(error)} />}
      {isOurs && error === "" && (
        <p className={text.paragraph}>
          This cell has not been computed since the pane was opened. Compute the workbook again,
          below, and its working is told.
        </p>
      )}
      {!isOurs && (
        <p className={mergeClasses(text.paragraph, text.faint)}>
          Select a cell that holds a Dosewright function to see how its number came about.
        </p>
      )}
    </>
  );
}
