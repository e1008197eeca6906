import { HostRefusal, type SheetHost } from "../../host/host";
import type { Notice } from "./pane-context";

/** Where something stands already, it is shown and the person asked; nothing is replaced unseen. */
export async function insertOrAsk(
  host: SheetHost,
  address: string,
  formula: string,
  again: (deed: () => Promise<string>) => void,
): Promise<string | Notice> {
  try {
    await host.insertFormula(address, formula);
  } catch (problem) {
    if (!(problem instanceof HostRefusal) || problem.kind !== "occupied") throw problem;
    const selection = await host.readSelection();
    if (selection?.cell.address !== address) throw problem;
    const { cell } = selection;
    const choose = () =>
      again(async () => {
        await host.insertFormula(address, formula, cell);
        return `${address} now holds ${formula}. It held ${cell.formula || String(cell.value)} before.`;
      });
    return {
      kind: "refused",
      text: problem.message,
      choice: { label: `Replace ${address}`, choose },
    };
  }
  return `${address} now holds ${formula}.`;
}
