/** Sorting where people look for it: in the page's own row of buttons, and in the menu of cells and columns. */
import { CommandType, ICommandService } from "@univerjs/core";
import {
  ContextMenuGroup,
  ContextMenuPosition,
  ILayoutService,
  IMenuManagerService,
  MenuItemType,
} from "@univerjs/ui";
import { areaAddress, columnName } from "../../workbook/address";
import type { Desk } from "../desk";
import { dropDown, type Offered } from "../drop-down";
import type { Grid } from "../grid/grid";
import type { Direction } from "./order";
import { type Sortable, sortableRows, sortRows } from "./sort-rows";
import { directions } from "./words";

const labels: Readonly<Record<Direction, string>> = {
  ascending: "Ascending",
  descending: "Descending",
};
const orders: Readonly<Record<Direction, string>> = {
  ascending: "1 to 9, A to Z, blanks last",
  descending: "Z to A, 9 to 1, blanks last",
};

const idOf = (direction: Direction) => `dosewright.command.sort-${direction}`;

export function offerSorting(
  grid: Grid,
  desk: Desk,
  menu: HTMLDetailsElement,
  tell: (sentence: string | undefined) => void,
): void {
  const { injector } = grid;
  const commands = injector.get(ICommandService);
  for (const direction of directions)
    commands.registerCommand({
      id: idOf(direction),
      type: CommandType.COMMAND,
      handler: async () => {
        const rows = sortableRows(grid);
        const fits = typeof rows !== "string";
        if (fits) sortRows(grid, rows, direction);
        tell(fits ? await leftBehind(desk, rows) : rows);
        return fits;
      },
    });

  const items = Object.fromEntries(
    directions.map((direction, order) => [
      idOf(direction),
      {
        order,
        menuItemFactory: () => ({
          id: idOf(direction),
          type: MenuItemType.BUTTON,
          title: `dosewright.sort.${direction}`,
        }),
      },
    ]),
  );
  const group = { [ContextMenuGroup.DATA]: items };
  injector.get(IMenuManagerService).mergeMenu({
    [ContextMenuPosition.MAIN_AREA]: group,
    [ContextMenuPosition.COL_HEADER]: group,
  });

  dropDown(menu, (): Offered[] => {
    const rows = sortableRows(grid);
    if (typeof rows === "string") return [rows];
    const title = rows.title ? ` (${rows.title})` : "";
    return [
      `${areaAddress(rows.area)} by column ${columnName(rows.column)}${title}`,
      ...(rows.filled.length > 0 ? [FILLED] : []),
      ...directions.map((direction) => ({
        label: labels[direction],
        more: orders[direction],
        choose: () => {
          void commands.executeCommand(idOf(direction));
          injector.get(ILayoutService).focus();
        },
      })),
    ];
  });
}

const FILLED = "What one formula fills in many rows stays, and is computed anew.";

async function leftBehind({ lying }: Desk, { worksheet }: Sortable): Promise<string | undefined> {
  if (lying?.source.kind !== "file") return undefined;
  const { notSorted } = await import("../book/files");
  return notSorted(lying.source, worksheet.getName());
}
