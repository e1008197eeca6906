import { describe, expect, test } from "vitest";
import { openedSheets } from "../../../src/workbench/book/opened-sheets";
import { functionNames } from "../../../src/workbook/formula/stored-form";
import { filledIn } from "../../../src/workbook/layout/filled-in";
import { readWorkbook } from "../../../src/workbook/read/read-workbook";
import { writeWorkbook } from "../../../src/workbook/write/write-workbook";
import { rawWorkbook } from "../raw-workbook";

const names = functionNames([]);
const slots = "dk1 lt1 dk2 lt2 accent1 accent2 accent3 accent4 accent5 accent6 hlink folHlink";

/** A theme whose colours tell their places: 01…, 02…, in the order in which files list them. */
const colours = Object.fromEntries(slots.split(" ").map((slot, at) => [slot, colourAt(at)]));
function colourAt(at: number): string {
  return `${at + 1}`.padStart(2, "0").repeat(3);
}
const srgb = (slot: string) => `<a:${slot}><a:srgbClr val="${colours[slot]}"/></a:${slot}>`;
const scheme = (inner: string) => `<a:clrScheme name="Own">${inner}</a:clrScheme>`;
const theme = (inner: string, more = "") =>
  `<a:theme xmlns:a="a" name="Own"><a:themeElements>${inner}</a:themeElements>${more}</a:theme>`;
const whole = scheme(slots.split(" ").map(srgb).join(""));

/** A fill for each colour of the theme by its number, then one with a tint. */
const fills = [...Array(12).keys(), '4" tint="-0.5'].map(
  (number) =>
    `<fill><patternFill patternType="solid"><fgColor theme="${number}"/></patternFill></fill>`,
);
const styles = `<fills>${fills.join("")}</fills><cellXfs>${fills.map((_, at) => `<xf fillId="${at}"/>`).join("")}</cellXfs><dxfs count="1"><dxf><font><color theme="5"/></font><border><left style="thin"><color theme="4"/></left></border></dxf></dxfs>`;
const rules =
  '<conditionalFormatting sqref="A1:A9"><cfRule type="colorScale" priority="1"><colorScale><cfvo type="min"/><cfvo type="max"/><color theme="0"/><color theme="4" tint="-0.5"/></colorScale></cfRule><cfRule type="expression" dxfId="0" priority="2"><formula>A1=1</formula></cfRule></conditionalFormatting>';

const opened = (part: string) =>
  readWorkbook(
    rawWorkbook({
      sheets: { S: `<sheetData/>${rules}` },
      styles,
      parts: { "xl/theme/theme1.xml": part },
      related: { theme: "theme/theme1.xml" },
    }),
    names,
  );

const shown = async (part: string) =>
  Object.values((await opened(part)).book.styles).map(({ fill }) => fill?.slice(1));

/** As long as nothing else is said. */
const usual =
  "ffffff 000000 e7e6e6 44546a 4472c4 ed7d31 a5a5a5 ffc000 5b9bd5 70ad47 0563c1 954f72".split(" ");

describe("colours of a file's own theme", () => {
  test("are told by their numbers, light before dark, and tinted", async () => {
    expect(await shown(theme(whole))).toEqual([
      ...[2, 1, 4, 3, 5, 6, 7, 8, 9, 10, 11, 12].map((place) => colourAt(place - 1)),
      "030303",
    ]);
  });

  test("are the last that the system had, where they are the system's", async () => {
    const lt1 = '<a:lt1><a:sysClr val="window" lastClr="F0F1F2"/></a:lt1>';
    expect((await shown(theme(scheme(lt1))))[0]).toBe("f0f1f2");
  });

  test.each([
    ["not well-formed", "<a:theme"],
    ["another document", "<notes/>"],
    ["without colours", theme(scheme(""))],
    ["of colours that are none", theme(whole.replaceAll(/val="\d/g, 'val="#'))],
    ["with other schemes only", theme("", `<a:extraClrSchemeLst>${whole}</a:extraClrSchemeLst>`)],
    ["with a document type", `<!DOCTYPE x [<!ENTITY e "e">]>${theme(whole)}`],
    ["nested without end", "<a>".repeat(300)],
  ])("are the usual ones where its theme is %s", async (_, part) => {
    expect((await shown(part)).slice(0, 12)).toEqual(usual);
  });

  test("stay as they are in a file that is written anew, whose theme is another", async () => {
    const { book } = await opened(theme(whole));
    const anew = await writeWorkbook(filledIn(openedSheets(book, []), book), names);
    const { sheets } = (await readWorkbook(anew, names)).book;
    const [scale, format] = sheets[0]?.formats ?? [];
    expect(scale?.ranking?.inner).toContain(
      '<color rgb="FF020202"></color><color rgb="FF030303"></color>',
    );
    expect(format?.look.ink).toBe("#060606");
    expect(format?.look.xml).toContain('<color rgb="FF050505"/></left>');
  });
});
