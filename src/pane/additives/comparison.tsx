import { Checkbox, Link, makeStyles, mergeClasses, tokens } from "@fluentui/react-components";
import { useEffect, useRef, useState } from "react";
import { known } from "../parts/amount";
import { NeedsSheet } from "../parts/needs-sheet";
import { usePane } from "../parts/pane-context";
import { useText } from "../theme/text-styles";
import { SheetButtons } from "./into-sheet-buttons";
import { entryValue, keyOf, type Listed } from "./items";
import { LowToHigh } from "./low-to-high";

const useStyles = makeStyles({
  table: { width: "100%", tableLayout: "fixed", borderCollapse: "collapse", hyphens: "auto" },
  head: {
    padding: "4px 8px 4px 0",
    textAlign: "start",
    verticalAlign: "bottom",
    fontWeight: tokens.fontWeightSemibold,
    overflowWrap: "anywhere",
  },
  property: {
    padding: "6px 0 0",
    borderTop: `1px solid ${tokens.colorNeutralStroke2}`,
    textAlign: "start",
    fontWeight: tokens.fontWeightRegular,
  },
  cell: {
    padding: "0 8px 6px 0",
    verticalAlign: "top",
    overflowWrap: "anywhere",
    fontVariantNumeric: "tabular-nums",
    "& span": { whiteSpace: "normal" },
  },
  under: {
    display: "block",
    fontSize: tokens.fontSizeBase200,
    lineHeight: tokens.lineHeightBase200,
  },
});

interface ComparisonProps {
  readonly items: readonly Listed[];
  open(item: Listed): void;
  changed(): void;
}

/** Two or three side by side, property by property. */
export function Comparison({ items, open, changed }: ComparisonProps) {
  const styles = useStyles();
  const text = useText();
  const { host } = usePane();
  const [withSources, setWithSources] = useState(false);
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  const properties = [...new Set(items.flatMap((item) => [...item.properties.keys()]))];
  const [first, ...rest] = items;
  /** The unit that a property has in all of them, which then stands at its head. */
  const unitOf = (property: string) => {
    const units = new Set(items.map((item) => item.properties.get(property)?.unit ?? "text"));
    units.delete("text");
    return units.size === 1 ? [...units].join() : "";
  };
  const isOneShelf = rest.every(({ shelf }) => shelf === first?.shelf);

  return (
    <article>
      <h3 ref={heading} tabIndex={-1} className={text.heading}>
        Side by side
      </h3>
      {host === undefined && <NeedsSheet to="to put these into it" />}
      {host !== undefined && first !== undefined && isOneShelf && (
        <SheetButtons items={[first, ...rest]} changed={changed} />
      )}
      <Checkbox
        label="Show the sources"
        checked={withSources}
        onChange={(_, { checked }) => setWithSources(checked === true)}
      />
      <table className={styles.table}>
        <thead>
          <tr>
            {items.map((item) => (
              <th key={keyOf(item)} scope="col" className={styles.head}>
                <Link as="button" onClick={() => open(item)}>
                  {item.name}
                </Link>
              </th>
            ))}
          </tr>
        </thead>
        {properties.map((property) => (
          <tbody key={property}>
            <tr>
              <th scope="rowgroup" colSpan={items.length} className={styles.property}>
                {property} <span className={text.faint}>{unitOf(property)}</span>
              </th>
            </tr>
            <tr>
              {items.map((item) => {
                const entry = item.properties.get(property);
                return (
                  <td key={keyOf(item)} className={styles.cell}>
                    {entry === undefined ? (
                      <span className={text.faint}>not known</span>
                    ) : (
                      <>
                        {known(entryValue(entry))}{" "}
                        {unitOf(property) === "" && entry.unit !== "text" && (
                          <span className={text.faint}>{entry.unit}</span>
                        )}
                        <span className={styles.under}>
                          <LowToHigh entry={{ ...entry, unit: "" }} />
                        </span>
                        <span className={styles.under}>{entry.evidence}</span>
                        {withSources && (
                          <span className={mergeClasses(styles.under, text.faint)}>
                            {entry.source}
                          </span>
                        )}
                      </>
                    )}
                  </td>
                );
              })}
            </tr>
          </tbody>
        ))}
      </table>
    </article>
  );
}
