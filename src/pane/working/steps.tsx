import { makeStyles, mergeClasses, tokens } from "@fluentui/react-components";
import { typeset } from "../../help/typeset";
import type { Line, Step, Table } from "../../working/step";
import { Amount, shown } from "../parts/amount";
import { Equation } from "../parts/equation";
import { Scroll } from "../parts/scroll";
import { useText } from "../theme/text-styles";

const useStyles = makeStyles({
  steps: { margin: 0, paddingInlineStart: "20px" },
  step: { marginBottom: tokens.spacingVerticalM },
  line: {
    display: "flex",
    flexWrap: "wrap",
    alignItems: "baseline",
    justifyContent: "space-between",
    columnGap: tokens.spacingHorizontalM,
    borderTop: `1px solid ${tokens.colorNeutralStroke2}`,
    paddingBlock: "2px",
  },
  value: { marginInlineStart: "auto", fontWeight: tokens.fontWeightSemibold },
  table: { borderCollapse: "collapse", fontSize: tokens.fontSizeBase200 },
  cell: {
    padding: "2px 10px 2px 0",
    borderTop: `1px solid ${tokens.colorNeutralStroke2}`,
    textAlign: "start",
    fontWeight: tokens.fontWeightRegular,
    verticalAlign: "bottom",
  },
  number: { textAlign: "end" },
});

/** A sample or a ladder can be as long as a sheet, which shows all of it: here its start is enough. */
const MOST_SHOWN = 100;

/** The way to the answer, each step with its numbers put in. */
export function Steps({ steps }: { steps: readonly Step[] }) {
  const styles = useStyles();
  const text = useText();
  return (
    <>
      <h4 className={text.subheading}>With the numbers of this cell</h4>
      <ol className={styles.steps}>
        {steps.map((step) => (
          <li key={step.what} className={styles.step}>
            {step.what}
            {step.kind === "table" ? (
              <StepTable step={step} />
            ) : (
              step.lines.slice(0, MOST_SHOWN).map((line, i) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: lines keep their places, and two may have one label
                <StepLine key={i} line={line} />
              ))
            )}
            <Rest of={step.kind === "table" ? step.rows.length : step.lines.length} />
          </li>
        ))}
      </ol>
    </>
  );
}

/** The unit at the end of a header: "cost [money]". */
const unitIn = (header = "") => /\[([^\]]+)\]$/.exec(header)?.[1];

function Rest({ of }: { of: number }) {
  const text = useText();
  if (of <= MOST_SHOWN) return null;
  return (
    <p className={text.faint}>
      The first {MOST_SHOWN} of {shown(of)}.
    </p>
  );
}

function StepLine({ line: { label, tex, value, unit } }: { line: Line }) {
  const styles = useStyles();
  const text = useText();
  const mathml = tex === undefined ? undefined : typeset(tex);
  return (
    <div className={styles.line}>
      {label !== "" && <span className={text.faint}>{label}</span>}
      {mathml !== undefined && <Equation mathml={mathml} label={`Equation ${label}`} isInline />}
      <span className={styles.value}>
        {mathml !== undefined && "= "}
        <Amount value={value} unit={unit} />
      </span>
    </div>
  );
}

const isOfNumbers = ({ rows }: Table, column: number) =>
  rows.some((row) => typeof row[column] === "number");

function StepTable({ step }: { step: Table }) {
  const styles = useStyles();
  const text = useText();
  return (
    <Scroll label={step.what}>
      <table className={styles.table}>
        <thead>
          <tr>
            {step.columns.map((column, c) => (
              <th
                key={column}
                scope="col"
                className={mergeClasses(
                  styles.cell,
                  text.faint,
                  isOfNumbers(step, c) && styles.number,
                )}
              >
                {column}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {step.rows.map((row, r) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: the rows of an answer keep their places
            <tr key={r}>
              {row.map((value, c) => (
                <td
                  // biome-ignore lint/suspicious/noArrayIndexKey: the columns of an answer keep their places
                  key={c}
                  className={mergeClasses(
                    styles.cell,
                    text.number,
                    typeof value === "number" && styles.number,
                  )}
                >
                  {shown(value, unitIn(step.columns[c]))}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </Scroll>
  );
}
