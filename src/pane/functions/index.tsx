import { Button, makeStyles, mergeClasses, SearchBox, tokens } from "@fluentui/react-components";
import { useEffect, useMemo, useState } from "react";
import { byFamily } from "../../help/families";
import type { FunctionReference } from "../../help/reference";
import { firstSentence } from "../../help/wording";
import type { Asked } from "../pane";
import { ListAndDetail } from "../parts/list-and-detail";
import { usePane } from "../parts/pane-context";
import { useReturnFocus } from "../parts/use-return-focus";
import { useText } from "../theme/text-styles";
import { findFunctions } from "./find-functions";
import { FunctionDetails } from "./function-details";

const useStyles = makeStyles({
  list: { maxWidth: "64ch" },
  search: { width: "100%", maxWidth: "100%", marginBottom: tokens.spacingVerticalS },
  row: { borderTop: `1px solid ${tokens.colorNeutralStroke2}` },
  name: {
    display: "block",
    width: "100%",
    minWidth: 0,
    textAlign: "start",
    paddingInline: "4px",
    fontWeight: tokens.fontWeightRegular,
  },
  about: {
    display: "block",
    fontSize: tokens.fontSizeBase200,
    lineHeight: tokens.lineHeightBase200,
  },
});

export function Functions({ asked }: { asked: Asked | undefined }) {
  const styles = useStyles();
  const text = useText();
  const { functions } = usePane();
  const [query, setQuery] = useState("");
  const [id, setId] = useState(asked?.item);
  useEffect(() => {
    if (asked !== undefined) setId(asked.item);
  }, [asked]);

  const found = useMemo(() => findFunctions(query, functions), [query, functions]);
  const chosen = functions.find((one) => one.id === id);
  const { remember } = useReturnFocus(chosen !== undefined);
  const show = (next: string) => {
    if (chosen === undefined) remember();
    setId(next);
  };
  // What answers a search best stands first; without one the families stand in the order of the work.
  const groups =
    query.trim() === "" ? byFamily(found) : [{ id: "found", title: "", functions: found }];

  return (
    <ListAndDetail
      listClass={styles.list}
      list={
        <>
          <h2 className={text.hidden}>Functions</h2>
          <SearchBox
            className={styles.search}
            aria-label="Search functions by name, unit or words of the trade"
            placeholder="Name, unit, or what it is for"
            value={query}
            onChange={(_, { value }) => setQuery(value)}
          />
          <p className={mergeClasses(text.faint, text.paragraph)} role="status">
            {found.length === 0
              ? "No function answers this search. Try another word of the trade."
              : found.length === 1
                ? "1 function"
                : `${found.length} functions`}
          </p>
          {groups.map((group) => (
            <section key={group.id} aria-label={group.title === "" ? "Found" : group.title}>
              {group.title !== "" && (
                <h3 className={text.subheading}>
                  {group.title} <span className={text.faint}>{group.id}</span>
                </h3>
              )}
              <ul className={text.list}>
                {group.functions.map((one) => (
                  <FunctionRow key={one.id} one={one} open={() => show(one.id)} />
                ))}
              </ul>
            </section>
          ))}
        </>
      }
      detail={chosen && <FunctionDetails key={chosen.id} one={chosen} />}
      back="All functions"
      close={() => setId(undefined)}
    />
  );
}

function FunctionRow({ one, open }: { one: FunctionReference; open: () => void }) {
  const styles = useStyles();
  const text = useText();
  return (
    <li className={styles.row}>
      <Button appearance="subtle" className={styles.name} onClick={open}>
        {one.id}
        <span className={mergeClasses(styles.about, text.faint)}>
          {firstSentence(one.description)}
        </span>
      </Button>
    </li>
  );
}
