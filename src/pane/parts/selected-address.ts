import { HostRefusal, type SheetHost } from "../../host/host";

/** The selected cell (the first of several), where something shall be written. */
export async function selectedAddress(host: SheetHost): Promise<string> {
  const selection = await host.readSelection();
  if (selection === undefined) {
    throw new HostRefusal("no such place", "No cell is selected. Select the cell to write into.");
  }
  return selection.cell.address;
}
