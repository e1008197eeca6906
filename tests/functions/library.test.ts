import { describe, expect, test } from "vitest";
import { version } from "../../package.json";
import { type BlankAs, blank, emulateExcel, HostError } from "../host/emulated-excel";

const HOSTS: readonly BlankAs[] = [0, null, ""];
const excel = emulateExcel();
const message = (id: string, ...given: unknown[]) => (excel.one(id, ...given) as HostError).message;

const OWN = [
  ["Additive", "COD factor [g/g]", "retention"],
  ["Mill starch", 1.07, 0.93],
  ["Guar gum", 1.02, blank],
  [blank, blank, blank],
];

describe("the LIBRARY family", () => {
  test("answers in one cell, whatever the case of the words", () => {
    expect(excel.one("LIBRARY.ADDITIVE", "guar GUM", "cod FACTOR")).toBe(1.1);
    expect(excel.one("LIBRARY.COMPONENT", "kaolin", "specific surface")).toBe(10);
    expect(excel.one("LIBRARY.ADDITIVE", "Guar gum", "charge")).toBe("none");
  });

  test.each(HOSTS)("puts an own table first, with blank cells handed over as %j", (blankAs) => {
    const host = emulateExcel(blankAs);
    expect(host.one("LIBRARY.ADDITIVE", "mill starch", "retention", OWN)).toBe(0.93);
    expect(host.one("LIBRARY.ADDITIVE", "guar gum", "COD factor", OWN)).toBe(1.02);
    expect(host.call("LIBRARY.ADDITIVES", undefined, OWN).slice(0, 2)).toEqual([
      ["Mill starch"],
      ["Guar gum"],
    ]);
    expect(host.call("LIBRARY.SOURCE", "mill starch", "COD factor", OWN)).toEqual([
      ["value", 1.07],
      ["unit", "g/g"],
      ["low", ""],
      ["high", ""],
      ["evidence", "own table"],
      ["source", "Your own table."],
    ]);
  });

  test("never takes a blank that comes as 0 for a measured nought", () => {
    const desktop = emulateExcel(0).one("LIBRARY.ADDITIVE", "guar gum", "retention", OWN);
    expect((desktop as HostError).message).toContain("Guar gum has 0 or a blank for retention");
    expect(emulateExcel(null).one("LIBRARY.ADDITIVE", "guar gum", "retention", OWN)).toBe(0.7);
  });

  test("gives back the error of an own cell, and only where that cell is asked for", () => {
    const faulty = [
      ["Additive", "COD factor", "retention"],
      ["Mill starch", new HostError("#DIV/0!"), 0.9],
    ];
    expect(excel.one("LIBRARY.ADDITIVE", "Mill starch", "COD factor", faulty)).toMatchObject({
      code: "#DIV/0!",
    });
    expect(excel.one("LIBRARY.ADDITIVE", "Mill starch", "retention", faulty)).toBe(0.9);
  });

  test("unwraps formatted values of an own table", () => {
    const wrapped = [
      ["Additive", "COD factor"],
      ["Mill starch", { type: "FormattedNumber", basicValue: 1.05 }],
    ];
    expect(excel.one("LIBRARY.ADDITIVE", "Mill starch", "COD factor", wrapped)).toBe(1.05);
  });

  test("answers #N/A with the nearest names, the properties or the tasks", () => {
    expect(excel.one("LIBRARY.ADDITIVE", "Gaur", "retention")).toMatchObject({ code: "#N/A" });
    expect(message("LIBRARY.ADDITIVE", "Gaur", "retention")).toContain(
      "nearest names are: Guar gum;",
    );
    expect(message("LIBRARY.COMPONENT", "Kaolin", "colour")).toContain(
      "It has: kind, specific surface,",
    );
    expect(message("LIBRARY.SAFETY", "Cook")).toContain("tasks are: Handling powder,");
  });

  test("closes every list of cautions the same way", () => {
    const closing = excel.call("LIBRARY.SAFETY", "Cooking").at(-1);
    expect(closing?.[0]).toMatch(
      /^The supplier's safety data sheet, the site's rules and local law come first/,
    );
    expect(excel.call("LIBRARY.SAFETY", "Guar gum").at(-1)).toEqual(closing);
  });

  test("says the version of the package", () => {
    expect(excel.one("LIBRARY.VERSION")).toBe(`Dosewright ${version}`);
  });
});
