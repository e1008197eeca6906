import { describe, expect, it } from "vitest";
import { ADDITIVES } from "../../src/library/additives";
import {
  additiveNames,
  additiveProperty,
  anyProperty,
  componentNames,
  componentProperty,
} from "../../src/library/catalogue";
import { COMPONENTS } from "../../src/library/components";
import { nameKey } from "../../src/library/names";
import type { OwnCells } from "../../src/library/own-table";
import { expectRefusal } from "../model/expectations";

const OWN: OwnCells = [
  ["My additives", "kind", "COD factor [g/g]", "retention", "charge"],
  ["Guar gum", "gum", 1.04, null, null],
  ["Mill starch", "cationic starch", 1.12, 0.91, "cationic"],
  ["", "gum", 1, 1, ""],
];

describe("looking up the library", () => {
  it("lists all additives, or those of a kind", () => {
    expect(additiveNames(undefined, null)).toContain("Native potato starch");
    expect(additiveNames("native starch", null)).toEqual([
      "Native maize starch",
      "Native potato starch",
      "Native wheat starch",
      "Native tapioca starch",
    ]);
    expect(additiveNames("POLYACRYLAMIDE", null)).toHaveLength(4);
    expect(additiveNames("starch", null)).toHaveLength(9);
    expect(componentNames(null)).toContain("Kaolin");
  });

  it("finds names and properties whatever the case, the spaces, or the spelling of fibre", () => {
    const entry = additiveProperty("  cationic STARCH,  ds 0.035 ", "Cod Factor", null);
    expect(entry.value).toBe(1.1);
    expect(entry.unit).toBe("g/g");
    expect(componentProperty("recycled fiber", "ash factor", null).evidence).toBe(
      "typical, from memory",
    );
    expect(anyProperty("kaolin", "ash factor", null).evidence).toBe("computed");
    expect(anyProperty("guar gum", "charge", null).value).toBe("none");
  });

  it("knows other words of the trade, after the names themselves", () => {
    const kaolin = componentProperty("Kaolin", "ash factor", null);
    expect(componentProperty("china CLAY", "ash factor", null)).toBe(kaolin);
    expect(additiveProperty("corn starch", "retention", null)).toBe(
      additiveProperty("Native maize starch", "retention", null),
    );
    expect(additiveProperty("CMC", "charge", null).value).toBe("anionic");
    const own: OwnCells = [
      ["component", "specific surface"],
      ["clay", 12],
    ];
    expect(componentProperty("clay", "specific surface", own).value).toBe(12);
    expect(componentProperty("kaolin", "specific surface", own).value).toBe(10);
  });

  it("has each name and each other word for one thing only", () => {
    for (const items of [ADDITIVES, COMPONENTS]) {
      const words = items.flatMap(({ name, alsoCalled = [] }) => [name, ...alsoCalled]);
      expect(new Set(words.map(nameKey)).size).toBe(words.length);
    }
  });

  it("names the nearest where a name is unknown", () => {
    expectRefusal("no answer", /no additive "Gaur gum".*nearest names are: Guar gum; /, () =>
      additiveProperty("Gaur gum", "retention", null),
    );
    expectRefusal("no answer", /no component "clay kaolin".*Kaolin/, () =>
      componentProperty("clay kaolin", "charge", null),
    );
    expectRefusal("no answer", 'The library has no kind "resin". Give one of: native starch,', () =>
      additiveNames("resin", null),
    );
  });

  it("names the properties that there are where one is unknown", () => {
    expectRefusal("no answer", /^Guar gum has no "price"\. It has: kind, chemistry,/, () =>
      additiveProperty("Guar gum", "price", null),
    );
  });

  it.each(["__proto__", "constructor", "toString", "hasOwnProperty", ""])(
    "knows nothing called %s",
    (name) => {
      expectRefusal("no answer", `no additive "${name}"`, () =>
        additiveProperty(name, "retention", null),
      );
      expectRefusal("no answer", `has no "${name}"`, () =>
        additiveProperty("Guar gum", name, null),
      );
      expectRefusal("no answer", `has no "${name}"`, () =>
        additiveProperty("Mill starch", name, OWN),
      );
    },
  );
});

describe("a table of your own", () => {
  it("goes before the built-in values, cell by cell", () => {
    const own = additiveProperty("guar gum", "COD factor", OWN);
    expect([own.value, own.unit, own.evidence]).toEqual([1.04, "g/g", "own table"]);
    expect(additiveProperty("guar gum", "retention", OWN).evidence).toBe("typical, from memory");
    expect(additiveProperty("mill starch", "retention", OWN).value).toBe(0.91);
  });

  it("does not make a measurement of a number that it merely copied from the library", () => {
    const copied: OwnCells = [
      ["name", "COD factor [g/g]", "retention"],
      ["Guar gum", additiveProperty("guar gum", "COD factor", null).value, 0.71],
    ];
    expect(additiveProperty("guar gum", "COD factor", copied)).toEqual(
      additiveProperty("guar gum", "COD factor", null),
    );
    expect(additiveProperty("guar gum", "retention", copied).evidence).toBe("own table");
  });

  it("is listed first, and what it replaces is not listed twice", () => {
    const names = additiveNames(undefined, OWN);
    expect(names.slice(0, 2)).toEqual(["Guar gum", "Mill starch"]);
    expect(names.filter((name) => name === "Guar gum")).toHaveLength(1);
    expect(additiveNames("cationic starch", OWN)[0]).toBe("Mill starch");
  });

  it("may hold names and properties that are awkward for a program", () => {
    const awkward: OwnCells = [
      ["name", "__proto__", "constructor"],
      ["__proto__", 5, 6],
      ["toString", 7, 8],
    ];
    expect(additiveProperty("__proto__", "__proto__", awkward).value).toBe(5);
    expect(additiveProperty("toString", "constructor", awkward).value).toBe(8);
    expect(additiveNames(undefined, awkward).slice(0, 2)).toEqual(["__proto__", "toString"]);
  });

  it("does not take a blank that a sheet hands over as 0 for a value", () => {
    const zero: OwnCells = [
      ["name", "BOD factor"],
      ["Mill polymer", 0],
    ];
    expectRefusal(
      "impossible input",
      "Mill polymer has 0 or a blank for bod factor",
      () => additiveProperty("Mill polymer", "BOD factor", zero).value,
    );
    const text: OwnCells = [
      ["name", "BOD factor"],
      ["Mill polymer", "0"],
    ];
    expect(additiveProperty("Mill polymer", "BOD factor", text).value).toBe(0);
  });

  it("spoils only the answer that needs a faulty cell", () => {
    const fault = new Error("#DIV/0!");
    const table: OwnCells = [
      ["name", "COD factor", "retention"],
      ["Mill starch", fault, 0.9],
    ];
    expect(additiveProperty("Mill starch", "retention", table).value).toBe(0.9);
    expect(() => additiveProperty("Mill starch", "COD factor", table).value).toThrow(fault);
    expect(additiveNames(undefined, table)[0]).toBe("Mill starch");
  });

  it("is refused where it is no table, or holds a name or a property twice", () => {
    expectRefusal("impossible input", "own table has no values", () =>
      additiveNames(undefined, [["Mill starch"]]),
    );
    expectRefusal("impossible input", "own table has no values", () =>
      additiveNames(undefined, [["a"], ["b"]]),
    );
    expectRefusal("impossible input", 'has "mill starch" twice', () =>
      additiveNames(undefined, [
        ["name", "x"],
        ["Mill starch", 1],
        ["mill starch", 2],
      ]),
    );
    expectRefusal("impossible input", 'has "cod factor" twice', () =>
      additiveNames(undefined, [
        ["name", "COD factor", "COD factor [g/g]"],
        ["Mill starch", 1, 2],
      ]),
    );
  });
});
