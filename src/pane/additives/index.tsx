import { Button, Field, makeStyles, SearchBox, Select, tokens } from "@fluentui/react-components";
import { useCallback, useEffect, useMemo, useState } from "react";
import { ListAndDetail } from "../parts/list-and-detail";
import { usePane } from "../parts/pane-context";
import { reasonOf } from "../parts/use-deed";
import { useReturnFocus } from "../parts/use-return-focus";
import { useText } from "../theme/text-styles";
import { Comparison } from "./comparison";
import { ItemDetails } from "./item-details";
import { ItemList } from "./item-list";
import { findItems, keyOf, kindsOf, MOST_COMPARED, readStock, type Stock } from "./items";

const useStyles = makeStyles({
  filters: { display: "grid", gap: tokens.spacingVerticalS, marginBottom: tokens.spacingVerticalM },
  list: { maxWidth: "480px" },
});

type View = { readonly kind: "item"; readonly key: string } | { readonly kind: "comparison" };

/** Until they are read. */
const NONE: Stock["items"] = [];

export function Additives() {
  const styles = useStyles();
  const text = useText();
  const { host } = usePane();
  const [stock, setStock] = useState<Stock>();
  const [problem, setProblem] = useState("");
  const [query, setQuery] = useState("");
  const [kind, setKind] = useState("");
  const [ticked, setTicked] = useState<readonly string[]>([]);
  const [view, setView] = useState<View>();

  const reload = useCallback(() => {
    readStock(host).then(
      (read) => {
        setStock(read);
        setProblem("");
      },
      (reason) => {
        setProblem(reasonOf(reason));
        void readStock(undefined).then(setStock);
      },
    );
  }, [host]);
  useEffect(() => {
    reload();
    return host?.watchTables(reload);
  }, [host, reload]);

  const items = stock?.items ?? NONE;
  const found = useMemo(() => findItems(items, kind, query), [items, kind, query]);
  const shownItem =
    view?.kind === "item" ? items.find((item) => keyOf(item) === view.key) : undefined;
  // What was ticked may have gone with its table.
  const side = items.filter((item) => ticked.includes(keyOf(item)));
  const compared = side.map(keyOf);
  const isOpen = shownItem !== undefined || (view?.kind === "comparison" && side.length > 0);
  const { remember } = useReturnFocus(isOpen);
  const show = (next: View) => {
    if (!isOpen) remember();
    setView(next);
  };

  const detail =
    shownItem !== undefined ? (
      <ItemDetails key={keyOf(shownItem)} item={shownItem} changed={reload} />
    ) : (
      <Comparison
        items={side}
        open={(item) => setView({ kind: "item", key: keyOf(item) })}
        changed={reload}
      />
    );

  return (
    <ListAndDetail
      listClass={styles.list}
      list={
        <>
          <h2 className={text.hidden}>Additives</h2>
          <div className={styles.filters}>
            <SearchBox
              aria-label="Search additives and components"
              placeholder="Search"
              value={query}
              onChange={(_, { value }) => setQuery(value)}
            />
            <Field label="Kind" orientation="horizontal" size="small">
              <Select size="small" value={kind} onChange={(_, { value }) => setKind(value)}>
                <option value="">all</option>
                <optgroup label="Additives">
                  {kindsOf(items, "additive").map((one) => (
                    <option key={one}>{one}</option>
                  ))}
                </optgroup>
                <optgroup label="Components of the furnish">
                  {kindsOf(items, "component").map((one) => (
                    <option key={one}>{one}</option>
                  ))}
                </optgroup>
              </Select>
            </Field>
          </div>
          {problem !== "" && (
            <p className={text.paragraph}>Your own tables could not be read. {problem}</p>
          )}
          {stock?.unread.map(({ table, reason }) => (
            <p key={table} className={text.paragraph}>
              The table {table} could not be read. {reason}
            </p>
          ))}
          {stock !== undefined && (
            <ItemList
              items={found}
              isRanked={query.trim() !== ""}
              compared={compared}
              open={(item) => show({ kind: "item", key: keyOf(item) })}
              compare={(item, isCompared) =>
                setTicked(
                  isCompared
                    ? [...compared, keyOf(item)].slice(-MOST_COMPARED)
                    : compared.filter((key) => key !== keyOf(item)),
                )
              }
              openComparison={() => show({ kind: "comparison" })}
            />
          )}
          {host !== undefined && (
            <Button size="small" appearance="subtle" onClick={reload}>
              Read your own tables again
            </Button>
          )}
        </>
      }
      detail={isOpen ? detail : undefined}
      back="All additives"
      close={() => setView(undefined)}
    />
  );
}
