import { Button, makeStyles, mergeClasses, tokens } from "@fluentui/react-components";
import { plans } from "../../../templates/plans";
import { layOut } from "../../workbook/layout/lay-out";
import type { Plan } from "../../workbook/plan";
import { NeedsSheet } from "../parts/needs-sheet";
import { usePane } from "../parts/pane-context";
import { useDeed } from "../parts/use-deed";
import { useText } from "../theme/text-styles";
import { holdingsOf } from "./holdings";
import { Miniature } from "./miniature";

const useStyles = makeStyles({
  templates: {
    display: "grid",
    gridTemplateColumns: "repeat(auto-fill, minmax(min(100%, 420px), 1fr))",
    columnGap: tokens.spacingHorizontalXXL,
  },
  template: {
    padding: `${tokens.spacingVerticalM} 0 ${tokens.spacingVerticalL}`,
    borderTop: `1px solid ${tokens.colorNeutralStroke2}`,
    maxWidth: "64ch",
  },
  list: { margin: 0, paddingInlineStart: "18px" },
  holds: { margin: `${tokens.spacingVerticalS} 0`, "& summary": { cursor: "pointer" } },
});

export function Templates() {
  const styles = useStyles();
  const text = useText();
  const { host } = usePane();
  return (
    <>
      <h2 className={text.hidden}>Templates</h2>
      {host === undefined && <NeedsSheet to="to add a template to a workbook" />}
      <p className={mergeClasses(text.paragraph, text.faint)}>
        Each comes as new sheets with names that are free. No cell that is there is touched. The
        numbers in them are those of Harrow Fen, an invented mill: type yours over them. In the
        pictures the charts are sketches.
      </p>
      <div className={styles.templates}>
        {plans.map((plan) => (
          <Template key={plan.id} plan={plan} />
        ))}
      </div>
    </>
  );
}

function Template({ plan }: { plan: Plan }) {
  const styles = useStyles();
  const text = useText();
  const { host } = usePane();
  const { busy, run } = useDeed();
  const insert = () => {
    if (host === undefined) return;
    run(async () => {
      const names = await host.addSheets((taken) => layOut(plan, taken));
      const undo = host.can.undoInOneStep ? " One undo takes them away again." : "";
      return `${plan.title}: ${names.length} new sheets, ${names.join(", ")}. Nothing else was changed.${undo}`;
    });
  };
  return (
    <article className={styles.template} aria-label={plan.title}>
      <h3 className={text.heading}>{plan.question}</h3>
      <p className={mergeClasses(text.paragraph, text.faint)}>{plan.title}</p>
      <Miniature plan={plan} />
      <details className={styles.holds}>
        <summary>What it holds</summary>
        {holdingsOf(plan).map(({ sheet, holds }) => (
          <div key={sheet}>
            <h4 className={text.subheading}>{sheet}</h4>
            <ul className={styles.list}>
              {holds.map((one) => (
                <li key={one}>{one}</li>
              ))}
            </ul>
          </div>
        ))}
      </details>
      <Button
        appearance="primary"
        disabled={busy || host?.can.addSheets !== true}
        aria-label={`Add to the workbook: ${plan.title}`}
        onClick={insert}
      >
        Add to the workbook
      </Button>
    </article>
  );
}
