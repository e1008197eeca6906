import { Button, makeStyles, tokens } from "@fluentui/react-components";
import type { SheetHost } from "../../host/host";
import { insertOrAsk } from "../parts/insert-or-ask";
import { type Notice, usePane } from "../parts/pane-context";
import { selectedAddress } from "../parts/selected-address";
import { useDeed } from "../parts/use-deed";
import { lookUpFormula, ownTable, rowsOf } from "./into-sheet";
import type { Listed } from "./items";

const useStyles = makeStyles({
  buttons: {
    display: "flex",
    flexWrap: "wrap",
    gap: tokens.spacingHorizontalS,
    marginBlock: tokens.spacingVerticalS,
  },
});

/** What the library can put into the sheet; only where there is one. */
export function useIntoSheet() {
  const { host } = usePane();
  const { busy, run } = useDeed();
  const atSelection = (deed: (sheet: SheetHost, address: string) => Promise<string | Notice>) => {
    if (host === undefined) return;
    run(async () => deed(host, await selectedAddress(host)));
  };
  return {
    busy,
    putValue: (item: Listed, property: string) =>
      atSelection((sheet, address) =>
        insertOrAsk(sheet, address, lookUpFormula(sheet.namespace, item, property), run),
      ),
    putRows: (items: readonly [Listed, ...Listed[]]) =>
      atSelection(async (sheet, address) => {
        const { address: filled } = await sheet.insertValues(
          address,
          rowsOf(items[0].shelf, items),
        );
        return `${filled} now holds ${listed(items)}, with a header that names the units.`;
      }),
    startTable: (items: readonly [Listed, ...Listed[]], changed: () => void) =>
      atSelection(async (sheet, address) => {
        const { address: filled, name } = await sheet.insertTable(
          address,
          ownTable(items[0].shelf, items),
        );
        changed();
        return `${filled} is now a table of your own. Type your measurements over its numbers; what you leave stays known as the library knows it. Give it to the library’s functions as ownTable: ${name}[#All].`;
      }),
  };
}

const listed = (items: readonly Listed[]) => items.map(({ name }) => name).join(", ");

/** The buttons for whole rows. All items are of one shelf. */
export function SheetButtons(props: {
  items: readonly [Listed, ...Listed[]];
  changed: () => void;
}) {
  const styles = useStyles();
  const { host } = usePane();
  const { busy, putRows, startTable } = useIntoSheet();
  const { items, changed } = props;
  return (
    <div className={styles.buttons}>
      <Button size="small" disabled={busy} onClick={() => putRows(items)}>
        {items.length === 1 ? "Put the row into the sheet" : "Put the rows into the sheet"}
      </Button>
      <Button
        size="small"
        disabled={busy || host?.can.insertTable !== true}
        onClick={() => startTable(items, changed)}
      >
        Start a table of your own
      </Button>
    </div>
  );
}
