import { Link, makeStyles, mergeClasses, tokens } from "@fluentui/react-components";
import { useEffect, useRef } from "react";
import type { ExampleReference, FunctionReference } from "../../help/reference";
import { printedRows, signature, withoutUnit } from "../../help/wording";
import { Equation } from "../parts/equation";
import { NeedsSheet } from "../parts/needs-sheet";
import { usePane } from "../parts/pane-context";
import { Scroll } from "../parts/scroll";
import { useText } from "../theme/text-styles";
import { InsertForm } from "./insert-form";
import { Words } from "./words";

const useStyles = makeStyles({
  signature: {
    margin: `${tokens.spacingVerticalS} 0`,
    padding: "6px 10px",
    borderLeft: `3px solid ${tokens.colorBrandForeground1}`,
    backgroundColor: tokens.colorNeutralBackground2,
  },
  words: { maxWidth: "64ch" },
  argument: {
    padding: `${tokens.spacingVerticalXS} 0`,
    borderTop: `1px solid ${tokens.colorNeutralStroke2}`,
  },
  line: { display: "flex", justifyContent: "space-between", gap: tokens.spacingHorizontalM },
  unit: { textAlign: "end" },
  facts: {
    display: "grid",
    gridTemplateColumns: "max-content 1fr",
    gap: "4px 12px",
    margin: `${tokens.spacingVerticalM} 0`,
    "@container (max-width: 420px)": { gridTemplateColumns: "1fr", gap: "0" },
  },
  fact: { margin: 0, "@container (max-width: 420px)": { marginBottom: "6px" } },
  answer: { borderCollapse: "collapse", marginTop: tokens.spacingVerticalXS },
  cell: { padding: "2px 12px 2px 0", textAlign: "start" },
  number: { textAlign: "end" },
});

/** All that is said of a function, and the form that writes it into the sheet. */
export function FunctionDetails({ one }: { one: FunctionReference }) {
  const styles = useStyles();
  const text = useText();
  const { host } = usePane();
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  const facts = [
    ["Gives", one.returns],
    ["Holds for", one.range],
    ["Source", one.source],
  ] as const;
  return (
    <article>
      <h3 ref={heading} tabIndex={-1} className={text.heading}>
        {one.name}
      </h3>
      <p className={mergeClasses(text.paragraph, styles.words)}>
        <Words text={one.description} about={one.id} />
      </p>
      <p className={mergeClasses(styles.signature, text.code)}>{signature(one)}</p>
      <Equation mathml={one.mathml} label={`Equation of ${one.id}`} />
      {host === undefined ? (
        <NeedsSheet to="to write this function into a cell" />
      ) : (
        <InsertForm one={one} />
      )}
      <h4 className={text.subheading}>Arguments</h4>
      <ul className={text.list}>
        {one.arguments.map((argument) => (
          <li key={argument.name} className={styles.argument}>
            <div className={styles.line}>
              <span className={text.code}>
                {argument.name}
                {argument.optional && <span className={text.faint}> optional</span>}
              </span>
              <span className={mergeClasses(text.faint, styles.unit)}>
                {argument.choices === undefined ? argument.unit : "choice"}
              </span>
            </div>
            <Words text={withoutUnit(argument)} about={one.id} />
          </li>
        ))}
      </ul>
      <dl className={styles.facts}>
        {facts.map(([what, words]) => (
          <Fact key={what} what={what}>
            <Words text={words} about={one.id} />
          </Fact>
        ))}
      </dl>
      <h4 className={text.subheading}>{one.examples.length === 1 ? "Example" : "Examples"}</h4>
      {one.examples.map((example) => (
        <Example key={example.formula} example={example} />
      ))}
      <p>
        <Link href={`help/${one.id.toLowerCase()}.html`} target="_blank" rel="noreferrer">
          The same as a page of its own
        </Link>
      </p>
    </article>
  );
}

function Fact({ what, children }: { what: string; children: React.ReactNode }) {
  const styles = useStyles();
  const text = useText();
  return (
    <>
      <dt className={text.faint}>{what}</dt>
      <dd className={styles.fact}>{children}</dd>
    </>
  );
}

function Example({ example: { formula, answer } }: { example: ExampleReference }) {
  const styles = useStyles();
  const text = useText();
  const rows = printedRows(answer);
  return (
    <>
      <p className={mergeClasses(styles.signature, text.code)}>{formula}</p>
      <Scroll label="Answer of the example">
        <table className={styles.answer}>
          <caption className={mergeClasses(text.faint, styles.cell)}>gives</caption>
          <tbody>
            {rows.map((row, r) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: a printed answer never changes
              <tr key={r}>
                {row.map((cell, c) => (
                  <td
                    // biome-ignore lint/suspicious/noArrayIndexKey: a printed answer never changes
                    key={c}
                    className={mergeClasses(
                      styles.cell,
                      Number.isFinite(Number(cell)) && styles.number,
                      text.number,
                    )}
                  >
                    {cell}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
    </>
  );
}
