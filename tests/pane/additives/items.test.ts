import { describe, expect, test } from "vitest";
import type { SheetHost, SheetTable } from "../../../src/host/host";
import {
  entryValue,
  findItems,
  kindsOf,
  type Listed,
  readStock,
} from "../../../src/pane/additives/items";

const hostWith = (...tables: SheetTable[]) =>
  ({
    readTables: async (header: string) =>
      tables.filter(({ columns }) => columns[0]?.toLowerCase() === header.toLowerCase()),
  }) as unknown as SheetHost;

const OWN: SheetTable = {
  name: "OwnAdditives",
  address: "Own!A1:D3",
  columns: ["Additive", "kind", "COD factor [g/g]", "retention"],
  rows: [
    ["Guar gum", null, 1.04, null],
    ["Mill starch", "cationic starch", 1.12, 0.91],
  ],
};

const named = (items: readonly Listed[], name: string) =>
  items.find((item) => item.name === name) as Listed;

describe("what the pane lists", () => {
  test("is what is built in where there is no sheet", async () => {
    const { items, unread } = await readStock(undefined);
    expect(items.map(({ name }) => name)).toContain("Kaolin");
    expect(items.every(({ table }) => table === undefined)).toBe(true);
    expect(unread).toEqual([]);
  });

  test("puts the sheet's own entries first, property by property", async () => {
    const { items } = await readStock(hostWith(OWN));
    expect(items.slice(0, 2).map(({ name }) => name)).toEqual(["Guar gum", "Mill starch"]);
    expect(items.filter(({ name }) => name === "Guar gum")).toHaveLength(1);
    const guar = named(items, "Guar gum");
    expect(guar).toMatchObject({ kind: "gum", table: "OwnAdditives", shelf: "additive" });
    expect(guar.properties.get("COD factor")).toMatchObject({
      value: 1.04,
      unit: "g/g",
      evidence: "own table",
    });
    expect(guar.properties.get("retention")?.evidence).toBe("typical, from memory");
  });

  test("knows where a table belongs whose names stand under the header name", async () => {
    const table = (name: string, ...columns: string[]): SheetTable => ({
      name,
      address: "Own!A1:B2",
      columns: ["Name", ...columns],
      rows: [[`one of ${name}`, ...columns.map(() => 0.5)]],
    });
    const { items } = await readStock(
      hostWith(
        table("Additives", "kind", "COD factor [g/g]"),
        table("Components", "kind", "specific surface [m²/g]"),
        table("Staff", "telephone"),
      ),
    );
    expect(items.filter((item) => item.table !== undefined)).toMatchObject([
      { name: "one of Additives", shelf: "additive" },
      { name: "one of Components", shelf: "component" },
    ]);
  });

  test("leaves out a table of the sheet that says nothing which the library knows", async () => {
    const furnish: SheetTable = {
      name: "furnish",
      address: "Orders!A5:C7",
      columns: ["Component", "Share", "Surface (m²/g)"],
      rows: [["fibre", 0.6, 1.5]],
    };
    const used = { ...furnish, name: "used", columns: ["Additive", "Price", "Dose (kg/t)"] };
    const own = { ...furnish, name: "own", columns: ["Component", "kind", "half load [mg/L]"] };
    const { items, unread } = await readStock(hostWith(furnish, used, own));
    expect(unread).toEqual([]);
    expect(items.filter(({ table }) => table !== undefined)).toMatchObject([
      { name: "fibre", shelf: "component", table: "own" },
    ]);
  });

  test("names a table that cannot be read, with the reason, and lists the rest", async () => {
    const twice = { ...OWN, rows: [OWN.rows[0], OWN.rows[0]] } as SheetTable;
    const { items, unread } = await readStock(hostWith(twice));
    expect(unread).toEqual([
      { table: "OwnAdditives", reason: expect.stringContaining('has "Guar gum" twice') },
    ]);
    expect(named(items, "Guar gum").table).toBeUndefined();
  });

  test("says the refusal in place of a value that an own table spoils", async () => {
    const zero = { ...OWN, rows: [["Mill starch", "gum", 0, 0.9]] } as SheetTable;
    const { items } = await readStock(hostWith(zero));
    const entry = named(items, "Mill starch").properties.get("cod factor");
    expect(entryValue(entry as never)).toContain("0 or a blank");
  });
});

describe("finding", () => {
  test("goes by kind, by name and by chemistry", async () => {
    const { items } = await readStock(undefined);
    expect(findItems(items, "gum", "").map(({ name }) => name)).toContain("Xanthan gum");
    expect(findItems(items, "", "potato")[0]?.name).toBe("Native potato starch");
    expect(findItems(items, "", "galactomannan").map(({ name }) => name)).toContain("Guar gum");
    expect(findItems(items, "filler", "starch")).toEqual([]);
    expect(findItems(items, "", "fiber")[0]?.kind).toBe("fibre");
  });

  test("knows the kinds of each shelf", async () => {
    const { items } = await readStock(undefined);
    expect(kindsOf(items, "component")).toEqual(["fibre", "fines", "filler"]);
    expect(kindsOf(items, "additive")).not.toContain("filler");
  });
});
