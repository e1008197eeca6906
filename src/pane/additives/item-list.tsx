import { Button, Checkbox, makeStyles, mergeClasses, tokens } from "@fluentui/react-components";
import { useText } from "../theme/text-styles";
import { keyOf, kindOf, type Listed, MOST_COMPARED } from "./items";

const useStyles = makeStyles({
  head: {
    display: "flex",
    justifyContent: "space-between",
    alignItems: "center",
    gap: tokens.spacingHorizontalS,
    minHeight: "32px",
  },
  kind: {
    margin: `${tokens.spacingVerticalM} 0 2px`,
    fontSize: tokens.fontSizeBase200,
    lineHeight: tokens.lineHeightBase200,
    fontWeight: tokens.fontWeightRegular,
  },
  row: {
    display: "grid",
    gridTemplateColumns: "1fr auto",
    alignItems: "center",
    borderTop: `1px solid ${tokens.colorNeutralStroke2}`,
  },
  name: {
    display: "block",
    width: "100%",
    minWidth: 0,
    textAlign: "start",
    paddingInline: "4px",
    fontWeight: tokens.fontWeightRegular,
  },
  own: { display: "block", fontSize: tokens.fontSizeBase200, lineHeight: tokens.lineHeightBase200 },
});

interface ItemListProps {
  readonly items: readonly Listed[];
  /** Whether the best answer to a search stands first; else the kinds stand together. */
  readonly isRanked: boolean;
  readonly compared: readonly string[];
  open(item: Listed): void;
  compare(item: Listed, isCompared: boolean): void;
  openComparison(): void;
}

export function ItemList(props: ItemListProps) {
  const { items, isRanked, compared, openComparison } = props;
  const styles = useStyles();
  const text = useText();
  const kinds = isRanked ? [""] : [...new Set(items.map(kindOf))];
  return (
    <>
      <div className={styles.head}>
        <span className={text.faint} role="status">
          {items.length === 0
            ? "Nothing answers this search. Clear a word or choose all kinds."
            : compared.length < 2
              ? `${items.length} found; tick two or three`
              : `${compared.length} ticked`}
        </span>
        <Button size="small" disabled={compared.length < 2} onClick={openComparison}>
          Compare
        </Button>
      </div>
      {kinds.map((kind) => (
        <section key={kind} aria-label={kind === "" ? "Found" : kind}>
          {kind !== "" && <h3 className={mergeClasses(styles.kind, text.faint)}>{kind}</h3>}
          <ul className={text.list}>
            {items
              .filter((item) => isRanked || kindOf(item) === kind)
              .map((item) => (
                <ItemRow key={keyOf(item)} item={item} {...props} />
              ))}
          </ul>
        </section>
      ))}
    </>
  );
}

function ItemRow({ item, compared, open, compare }: ItemListProps & { readonly item: Listed }) {
  const styles = useStyles();
  const text = useText();
  const isCompared = compared.includes(keyOf(item));
  return (
    <li className={styles.row}>
      <Button appearance="subtle" className={styles.name} onClick={() => open(item)}>
        {item.name}
        {item.table !== undefined && (
          <span className={mergeClasses(styles.own, text.faint)}>own, from {item.table}</span>
        )}
      </Button>
      <Checkbox
        aria-label={`Compare ${item.name}`}
        checked={isCompared}
        disabled={compared.length >= MOST_COMPARED && !isCompared}
        onChange={(_, { checked }) => compare(item, checked === true)}
      />
    </li>
  );
}
