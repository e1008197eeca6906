import { describe, expect, test } from "vitest";
import { ownItems } from "../../../src/library/own-table";
import { lookUpFormula, ownTable, rowsOf } from "../../../src/pane/additives/into-sheet";
import { type Listed, readStock } from "../../../src/pane/additives/items";
import { column, emulateExcel } from "../../host/emulated-excel";

const { items } = await readStock(undefined);
const named = (name: string) => items.find((item) => item.name === name) as Listed;
const excel = emulateExcel();

describe("a value goes into the sheet as a look-up", () => {
  test("by name and property", () => {
    expect(lookUpFormula("WETEND", named("Guar gum"), "COD factor")).toBe(
      '=WETEND.LIBRARY.ADDITIVE("Guar gum","COD factor")',
    );
    expect(lookUpFormula("WETEND", named("Kaolin"), "half load")).toBe(
      '=WETEND.LIBRARY.COMPONENT("Kaolin","half load")',
    );
  });

  test("from the own table where it stands there", () => {
    const own: Listed = { ...named("Guar gum"), name: 'Mill "A"', table: "OwnAdditives" };
    expect(lookUpFormula("WETEND", own, "COD factor")).toBe(
      '=WETEND.LIBRARY.ADDITIVE("Mill ""A""","COD factor",OwnAdditives[#All])',
    );
  });

  test("that gives the value that the pane shows", () => {
    for (const [property, entry] of named("Guar gum").properties) {
      expect(excel.one("LIBRARY.ADDITIVE", "Guar gum", property)).toBe(entry.value);
    }
    for (const [property, entry] of named("Kaolin").properties) {
      expect(excel.one("LIBRARY.COMPONENT", "Kaolin", property)).toBe(entry.value);
    }
  });
});

describe("whole rows", () => {
  const [header = [], ...rows] = rowsOf("additive", [named("Guar gum"), named("Anionic starch")]);

  test("stand under a header that names each property and its unit", () => {
    expect(header[0]).toBe("Additive");
    expect(header).toContain("COD factor [g/g]");
    expect(header).toContain("chemistry");
    expect(rows.map((row) => row[0])).toEqual(["Guar gum", "Anionic starch"]);
    expect(rows.every((row) => row.length === header.length)).toBe(true);
  });

  test("leave blank what is not known of one of them", () => {
    const place = header.indexOf("degree of substitution [groups per sugar unit]");
    expect(rows[0]?.[place]).toBeNull();
    expect(rows[1]?.[place]).toBeGreaterThan(0);
  });

  test("are an own table that the library reads back, number by number", () => {
    const { columns, rows: cells } = ownTable("additive", [named("Guar gum")]);
    const table = [columns, ...cells];
    const [read] = ownItems(table);
    expect(read?.name).toBe("Guar gum");
    for (const [property, entry] of named("Guar gum").properties) {
      expect(read?.properties.get(property.toLowerCase())?.value, property).toBe(entry.value);
      expect(excel.one("LIBRARY.ADDITIVE", "Guar gum", property, table)).toBe(entry.value);
    }
    expect(excel.call("LIBRARY.ADDITIVES", undefined, table)[0]).toEqual(column("Guar gum")[0]);
  });
});
