import { Button, Link, makeStyles, mergeClasses, tokens } from "@fluentui/react-components";
import { useEffect, useRef } from "react";
import type { Entry } from "../../library/entry";
import { Amount } from "../parts/amount";
import { NeedsSheet } from "../parts/needs-sheet";
import { usePane } from "../parts/pane-context";
import { useText } from "../theme/text-styles";
import { SheetButtons, useIntoSheet } from "./into-sheet-buttons";
import { entryValue, type Listed } from "./items";
import { LowToHigh } from "./low-to-high";

const useStyles = makeStyles({
  property: {
    padding: `${tokens.spacingVerticalS} 0`,
    borderTop: `1px solid ${tokens.colorNeutralStroke2}`,
  },
  line: {
    display: "flex",
    flexWrap: "wrap",
    justifyContent: "space-between",
    columnGap: tokens.spacingHorizontalM,
  },
  value: { marginInlineStart: "auto", textAlign: "end" },
  words: { textAlign: "start" },
  under: { fontSize: tokens.fontSizeBase200, lineHeight: tokens.lineHeightBase200 },
  evidence: { fontWeight: tokens.fontWeightSemibold },
  foot: {
    display: "grid",
    gridTemplateColumns: "1fr auto",
    alignItems: "end",
    columnGap: tokens.spacingHorizontalM,
    "& button": { minWidth: 0 },
  },
});

/** All that is known of an additive or a component: each number with its unit, range, evidence and source. */
export function ItemDetails({ item, changed }: { item: Listed; changed: () => void }) {
  const text = useText();
  const { host, open } = usePane();
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  return (
    <article>
      <h3 ref={heading} tabIndex={-1} className={text.heading}>
        {item.name}
      </h3>
      <p className={mergeClasses(text.paragraph, text.faint)}>
        {item.kind}
        {item.table !== undefined && ` · your own, from the table ${item.table}`}
      </p>
      {host === undefined ? (
        <NeedsSheet to="to put values into it" />
      ) : (
        <>
          <p className={mergeClasses(text.paragraph, text.faint)}>
            “Put” writes a formula into the selected cell that looks the value up.
          </p>
          <SheetButtons items={[item]} changed={changed} />
        </>
      )}
      <Link as="button" onClick={() => open("Safety", item.name)}>
        Cautions for {item.name}
      </Link>
      <ul className={text.list}>
        {[...item.properties].map(([property, entry]) => (
          <Property key={property} item={item} property={property} entry={entry} />
        ))}
      </ul>
    </article>
  );
}

function Property(props: { item: Listed; property: string; entry: Entry }) {
  const { item, property, entry } = props;
  const styles = useStyles();
  const text = useText();
  const { host } = usePane();
  const { busy, putValue } = useIntoSheet();
  const value = entryValue(entry);
  return (
    <li className={styles.property}>
      <div className={styles.line}>
        <span>{property}</span>
        <span className={mergeClasses(styles.value, typeof value === "string" && styles.words)}>
          <Amount value={value} unit={entry.unit} isFromLibrary />
        </span>
      </div>
      <div className={mergeClasses(styles.line, styles.under)}>
        <span className={styles.evidence}>{entry.evidence}</span>
        <LowToHigh entry={entry} />
      </div>
      <div className={styles.foot}>
        <p className={mergeClasses(text.paragraph, styles.under, text.faint)}>{entry.source}</p>
        {host !== undefined && (
          <Button
            size="small"
            disabled={busy}
            aria-label={`Put the ${property} of ${item.name} into the selected cell`}
            onClick={() => putValue(item, property)}
          >
            Put
          </Button>
        )}
      </div>
    </li>
  );
}
