/** Rules of a file that follow their cells in the grid, and the elements of the file that say them then. */
import {
  InsertColMutation,
  InsertRowMutation,
  MoveRangeMutation,
  RemoveRowMutation,
} from "@univerjs/sheets";
import { strFromU8, unzipSync } from "fflate";
import { describe, expect, test } from "vitest";
import { rangeOf } from "../../../src/engine/ranges";
import { Follower } from "../../../src/workbench/following/follower";
import { followRule, type RuleNow } from "../../../src/workbench/following/rules";
import { parseArea } from "../../../src/workbook/address";
import { functionNames } from "../../../src/workbook/formula/stored-form";
import { patchWorkbook } from "../../../src/workbook/patch/patch-workbook";
import { ruleChanges } from "../../../src/workbook/patch/rule-changes";
import { readWorkbook } from "../../../src/workbook/read/read-workbook";
import { rawWorkbook } from "../../workbook/raw-workbook";
import { type Command, Commands } from "./commands";

const names = functionNames(["DOSE.TARGET"]);
const styles =
  '<dxfs count="1"><dxf><fill><patternFill><bgColor rgb="FF00FF99"/></patternFill></fill></dxf></dxfs>';
const ids: Readonly<Record<string, string>> = { S: "s", T: "t" };
const nameOf = (id: string) => Object.keys(ids).find((name) => ids[name] === id);

/** The elements behind the cells of the sheet S after the commands, and of T where T is told what it has before. */
async function saved(rules: string, command: Command, rulesOfT = "") {
  const sheets = { S: `<sheetData/>${rules}`, T: `<sheetData/>${rulesOfT}` };
  const opened = await readWorkbook(rawWorkbook({ sheets, styles }), names);
  const grid = new Commands();
  const follower = new Follower(grid.grid);
  const idOf = (name: string) => ids[name] ?? "";
  const followed = opened.book.sheets.map(({ name, entryRules = [], formats = [] }) => ({
    entryRules: entryRules.map((rule) => {
      const { from, to } = rule;
      return followRule(follower, "entry rule", idOf(name), rule, { from, to }, idOf);
    }),
    formats: formats.map((rule) => {
      const { formula } = rule;
      return followRule(follower, "format", idOf(name), rule, { formula }, idOf);
    }),
  }));
  const on = (name: string) => {
    const here = <T>(all: readonly RuleNow<T>[]) =>
      all
        .flatMap((now) => now(nameOf))
        .flatMap(({ sheetId, rule }) => (sheetId === idOf(name) && rule ? [rule] : []));
    return {
      entryRules: here(followed.flatMap((sheet) => sheet.entryRules)),
      formats: here(followed.flatMap((sheet) => sheet.formats)),
    };
  };
  const before = new Map(Object.keys(ids).map((name) => [name, on(name)] as const));
  grid.run(command);
  const { bytes, stale } = await patchWorkbook(opened, new Map(), names, {
    rules: new Map([...before].map(([name, was]) => [name, ruleChanges(was, on(name))] as const)),
    cuts: new Map([["S", follower.cutFrom("s")]]),
  });
  const parts = unzipSync(bytes);
  const behindCells = (number: number) =>
    strFromU8(parts[`xl/worksheets/sheet${number}.xml`] as Uint8Array)
      .replace(/^.*<sheetData\/>/s, "")
      .replace("</worksheet>", "");
  const { book } = await readWorkbook(bytes, names);
  return { rules: behindCells(1), onT: behindCells(2), stale: stale.length > 0, book };
}

const cut = (from: string, to: string, sheet = "s"): Command => ({
  id: MoveRangeMutation.id,
  params: {
    fromRange: rangeOf(parseArea(from)),
    toRange: rangeOf(parseArea(to)),
    from: { subUnitId: "s" },
    to: { subUnitId: sheet },
  },
});

const onLines = (id: string, lines: string): Command => ({
  id,
  params: { subUnitId: "s", range: rangeOf(parseArea(lines)) },
});

const insertRow = (row: number) => onLines(InsertRowMutation.id, `A${row}:Z${row}`);
const removeRow = (row: number) => onLines(RemoveRowMutation.id, `A${row}:Z${row}`);
const insertColumn = (column: string) => onLines(InsertColMutation.id, `${column}1:${column}99`);

const format = (places: string, formula: string, more = "") =>
  `<conditionalFormatting sqref="${places}"${more}><cfRule type="expression"  dxfId='0' priority="1"><formula>${formula}</formula></cfRule></conditionalFormatting>`;

describe("a conditional format says its cells and what they are compared with, and all else as before", () => {
  test.each([
    ["nothing that it reads", cut("H1:H2", "J1:J2"), ["B5:B9", "b5&gt;$C5"]],
    ["a row above", insertRow(2), ["B6:B10", "B6&gt;$C6"]],
    ["a row within", insertRow(7), ["B5:B10", "b5&gt;$C5"]],
    ["a row less within", removeRow(7), ["B5:B8", "b5&gt;$C5"]],
    ["its first row less", removeRow(5), ["B5:B8", "b5&gt;$C5"]],
    ["a column between", insertColumn("C"), ["B5:B9", "B5&gt;$D5"]],
    ["all cells elsewhere", cut("B5:B9", "E15:E19"), ["E15:E19", "E15&gt;$C15"]],
    ["the middle elsewhere", cut("B6:B7", "E6:E7"), ["B5 E6:E7 B8:B9", "b5&gt;$C5"]],
    ["the top elsewhere", cut("B5:B6", "E15:E16"), ["B7:B9 E15:E16", "B7&gt;$C7"]],
    ["all limits elsewhere", cut("C5:C9", "F5:F9"), ["B5:B9", "B5&gt;$F5"]],
  ] as const)("%s", async (_, command, [places, formula]) => {
    const { rules, stale } = await saved(format("B5:B9", "b5&gt;$C5"), command);
    expect(rules).toBe(format(places, formula));
    expect(stale).toBe(false);
  });

  test.each([
    ["B5:B6 D5:D6", "B5&gt;$H$1", insertRow(1), "B6:B7 D6:D7", "B6&gt;$H$2"],
    ["B5:B6 D5:D6", "B5&gt;B$1", cut("D5:D6", "D7:D8"), "B5:B6 D7:D8", "B5&gt;B$1"],
    ["D5:D6 B8:B9", "SUM($A5:C5)&lt;D5", insertColumn("A"), "E5:E6 C8:C9", "SUM($B5:D5)&lt;E5"],
    [
      "B5",
      "B5&gt;_xldudf_WETEND_DOSE_TARGET(T!A1,$C$1)",
      insertRow(1),
      "B6",
      "B6&gt;_xldudf_WETEND_DOSE_TARGET(T!A1,$C$2)",
    ],
  ] as const)("over %s with %s", async (places, formula, command, now, then) => {
    const { rules } = await saved(format(places, formula), command);
    expect(rules).toBe(format(now, then));
  });

  test("with bounds of a comparison", async () => {
    const rule = (places: string, from: string, to: string) =>
      `<conditionalFormatting sqref="${places}"><cfRule type="cellIs" dxfId="0" priority="1" operator="between"><formula>${from}</formula><formula>${to}</formula></cfRule></conditionalFormatting>`;
    const { rules } = await saved(rule("B5:B9", "$C$1", "D5+$E$1"), insertRow(1));
    expect(rules).toBe(rule("B6:B10", "$C$2", "D6+$E$2"));
  });
});

describe("cells that are cut with what they are compared with become a rule of their own", () => {
  test("a conditional format with the others of its cells, each in a copy of what is around it", async () => {
    const around = (places: string, first: string, second: string, third: string) =>
      `<conditionalFormatting sqref="${places}" pivot="0"> <cfRule type="expression" dxfId="0" priority="1"><formula>${first}</formula></cfRule>${second}${third}</conditionalFormatting>`;
    const fixed =
      '<cfRule type="expression" dxfId="0" priority="2"><formula>$H$1=1</formula></cfRule>';
    const strange = '<cfRule type="strange" priority="3"/>';
    const { rules } = await saved(
      around("B5:B9", "B5&gt;$C5", fixed, strange),
      cut("B6:C7", "E6:F7"),
    );
    expect(rules).toBe(
      around("B5 B8:B9", "B5&gt;$C5", "", "") +
        around("E6:E7", "E6&gt;$F6", "", "") +
        `<conditionalFormatting sqref="B5 E6:E7 B8:B9" pivot="0"> ${fixed}${strange}</conditionalFormatting>`,
    );
  });

  test("an entry rule in a copy without its name, which is counted", async () => {
    const rule = (places: string, formula: string, id = "") =>
      `<dataValidation type="custom"${id} sqref="${places}"><formula1>${formula}</formula1></dataValidation>`;
    const list = (count: number, ...rules: readonly string[]) =>
      `<dataValidations count="${count}">${rules.join("")}</dataValidations>`;
    const id = ' xr:uid="{0}"';
    const other = rule("H1", "H1&gt;1");
    const { rules } = await saved(
      list(2, rule("B5:B9", "B5&gt;$C5", id), other),
      cut("B6:C7", "E6:F7"),
    );
    expect(rules).toBe(
      list(3, rule("B5 B8:B9", "B5&gt;$C5", id), rule("E6:E7", "E6&gt;$F6"), other),
    );
  });
});

describe("an entry rule", () => {
  const list = (places: string, formula: string) =>
    `<extLst><ext xmlns:x14="x" xmlns:xm="y"><x14:dataValidations count="1"><x14:dataValidation type="list"><x14:formula1><xm:f>${formula}</xm:f></x14:formula1><xm:sqref>${places}</xm:sqref></x14:dataValidation></x14:dataValidations></ext></extLst>`;

  test("of an extension says where it is now", async () => {
    const { rules } = await saved(list("B5:B9", "T!$A$1:$A$3"), cut("B5:B6", "E5:E6"));
    expect(rules).toBe(list("E5:E6 B7:B9", "T!$A$1:$A$3"));
  });

  test("of a length of text says what its limit is now", async () => {
    const rule = (places: string, from: string) =>
      `<dataValidations count="1"><dataValidation type="textLength" operator="lessThan" sqref="${places}"><formula1>${from}</formula1></dataValidation></dataValidations>`;
    const { rules } = await saved(rule("B5:B9", "$C$1"), cut("C1", "D1"));
    expect(rules).toBe(rule("B5:B9", "$D$1"));
  });

  test("is gone once another stands over all its cells", async () => {
    const rule = (places: string, from: string) =>
      `<dataValidation type="custom" sqref="${places}"><formula1>${from}</formula1></dataValidation>`;
    const { rules } = await saved(
      `<dataValidations count="2">${rule("B5:B6", "1")}${rule("D5:D7", "2")}</dataValidations>`,
      cut("D5:D6", "B5:B6"),
    );
    expect(rules).toBe(`<dataValidations count="1">${rule("B5:B6 D7", "2")}</dataValidations>`);
  });

  test("goes to another sheet of the file, in place of what stood there", async () => {
    const rule = (places: string, from: string) =>
      `<dataValidation type="custom" sqref="${places}"><formula1>${from}</formula1></dataValidation>`;
    const all = (count: number, ...rules: readonly string[]) =>
      `<dataValidations count="${count}">${rules.join("")}</dataValidations>`;
    const asked = all(1, rule("B5:B9", "B5&gt;$C$1"));
    const { rules, onT, stale } = await saved(
      asked,
      cut("B5:B6", "B5:B6", "t"),
      all(1, rule("B6:B7", "7")),
    );
    expect(rules).toBe(all(1, rule("B7:B9", "B7&gt;$C$1")));
    expect(onT).toBe(all(2, rule("B5:B6", "B5&gt;S!$C$1"), rule("B7", "7")));
    expect(stale).toBe(false);
    const whole = await saved(asked, cut("B5:B9", "B5:B9", "t"), '<pageMargins left="1"/>');
    expect(whole.rules).toBe("");
    expect(whole.onT).toBe(`${all(1, rule("B5:B9", "B5&gt;S!$C$1"))}<pageMargins left="1"/>`);
  });
});

test("a scale of colours says once where it is when it was cut over its own cells, or over a format", async () => {
  const scale = (places: string) =>
    `<conditionalFormatting sqref="${places}"><cfRule type="colorScale" priority="2"><colorScale><cfvo type="min"/><cfvo type="max"/><color rgb="FF00AA11"/><color rgb="FFAA00FF"/></colorScale></cfRule></conditionalFormatting>`;
  const own = await saved(scale("B1:B6"), cut("B1:B3", "B3:B5"));
  expect(own.rules).toBe(scale("B3:B5 B6"));
  const both = (places: string, formula: string, scaled: string) =>
    format(places, formula) + scale(scaled);
  const over = await saved(both("D1:D6", "D1&gt;0", "B1:B6"), cut("B1:B2", "D1:D2"));
  expect(over.rules).toBe(both("D3:D6", "D3&gt;0", "D1:D2 B3:B6"));
});

describe("formats go to another sheet of the file", () => {
  test("with their look, a comparison as a formula", async () => {
    const { rules, onT, stale } = await saved(
      '<conditionalFormatting sqref="B5:B9"><cfRule type="cellIs" dxfId="0" priority="4" operator="greaterThan"><formula>$C$1</formula></cfRule></conditionalFormatting>',
      cut("B8:B9", "D1:D2", "t"),
      format("D2:D3", "D2=1"),
    );
    expect(rules).toContain('sqref="B5:B7"');
    expect(onT).toBe(
      format("D3", "D3=1") +
        '<conditionalFormatting sqref="D1:D2"><cfRule type="expression" dxfId="0" priority="2"><formula>D1&gt;(S!$C$1)</formula></cfRule></conditionalFormatting>',
    );
    expect(stale).toBe(false);
  });

  const bars = (places: string) =>
    `<conditionalFormatting sqref="${places}"><cfRule type="dataBar" priority="1"><dataBar><cfvo type="min"/><cfvo type="max"/><color rgb="FFFF8811"/></dataBar><extLst><ext xmlns:x14="x" uri="u"><x14:id>{0}</x14:id></ext></extLst></cfRule></conditionalFormatting>`;
  const more = (places: string) =>
    `<extLst><ext xmlns:x14="x" xmlns:xm="y" uri="v"><x14:conditionalFormattings>${places === "" ? "" : `<x14:conditionalFormatting><x14:cfRule type="dataBar" id="{0}"><x14:dataBar><x14:cfvo type="autoMin"/><x14:cfvo type="autoMax"/></x14:dataBar></x14:cfRule><xm:sqref>${places}</xm:sqref></x14:conditionalFormatting>`}</x14:conditionalFormattings></ext></extLst>`;

  test.each([
    ["B2:B3", "B1", ""],
    ["B1:B3", "", "<extLst/>"],
    ["B1:B3", "", more("H1:H3")],
  ])("bars over %s with what an extension says of them", async (from, left, extensions) => {
    const written = bars("B1:B3") + more("B1:B3");
    const { rules, book, stale } = await saved(written, cut(from, from, "t"), extensions);
    expect(rules).toBe((left === "" ? "" : bars(left)) + more(left));
    expect(stale).toBe(false);
    const [{ formats = [] } = {}, { formats: moved = [] } = {}] = book.sheets;
    const ranking = { attributes: { type: "dataBar" }, extension: /autoMin.*autoMax/ };
    const says = { ...ranking, extension: expect.stringMatching(ranking.extension) };
    expect(moved).toMatchObject([{ area: parseArea(from), ranking: says }]);
    expect(formats).toMatchObject(left === "" ? [] : [{ area: parseArea(left), ranking: says }]);
  });
});

describe("a rule of a kind that is not understood", () => {
  const strange = (places: string) =>
    `<conditionalFormatting sqref="${places}"><cfRule type="strange" priority="3"/></conditionalFormatting>`;

  test("goes along with a rule over the same cells", async () => {
    const both = (places: string, formula: string) =>
      strange(`${places} H9`) + format(places, formula);
    const { rules, stale } = await saved(both("B5:B9", "B5&gt;1"), cut("B5:B9", "E5:E9"));
    expect(rules).toBe(both("E5:E9", "E5&gt;1"));
    expect(stale).toBe(false);
  });

  test("stays where no such rule is, and that is told where its cells were cut", async () => {
    const cutElsewhere = await saved(strange("B5:B9"), cut("H5:H6", "E5:E6"));
    expect(cutElsewhere).toMatchObject({ rules: strange("B5:B9"), stale: false });
    const cutHere = await saved(strange("B5:B9"), cut("B5:B6", "E5:E6"));
    expect(cutHere).toMatchObject({ rules: strange("B5:B9"), stale: true });
  });
});
