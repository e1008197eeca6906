import { describe, expect, test } from "vitest";
import type { DefinedName } from "../../../src/workbook/book";
import { functionNames } from "../../../src/workbook/formula/stored-form";
import { namesBetween, patchNames } from "../../../src/workbook/patch/defined-names";

const functions = functionNames(["DOSE.TARGET"]);

const workbook = (names: string) =>
  `<workbook><sheets><sheet name="S"/><sheet name="T"/></sheets><externalReferences/>${names}<calcPr/></workbook>`;

const list = (...names: string[]) => `<definedNames>${names.join("")}</definedNames>`;

const dose: DefinedName = { name: "dose", formula: "S!$A$1" };
const local: DefinedName = { name: "dose", formula: "T!$A$1", sheet: "T" };
const printed = '<definedName name="_xlnm.Print_Area" localSheetId="0">S!$A$1:$B$9</definedName>';
const doseXml = '<definedName name="dose" comment="kg/t">S!$A$1</definedName>';
const localXml = '<definedName name="dose" localSheetId="1">T!$A$1</definedName>';

describe("the names of a file", () => {
  test.each<[string, DefinedName[], string, string]>([
    [
      "are added to those it has",
      [dose, local],
      list(printed, doseXml),
      list(printed, doseXml, localXml),
    ],
    ["are added where it has none", [local], "", list(localXml)],
    [
      "name other cells",
      [{ ...dose, formula: "S!$B$2" }],
      list(doseXml, printed),
      list(doseXml.replace("$A$1", "$B$2"), printed),
    ],
    ["are taken away, but for those of the programs", [], list(printed, doseXml), list(printed)],
    ["are taken away to the last, and their list with them", [], list(doseXml), ""],
    [
      "name our functions in the stored form",
      [{ name: "wanted", formula: "WETEND.DOSE.TARGET(1,1)" }],
      "",
      list('<definedName name="wanted">_xldudf_WETEND_DOSE_TARGET(1,1)</definedName>'),
    ],
  ])("%s", (_, after, before, expected) => {
    const known = [...(before.includes(doseXml) ? [dose] : [])];
    const patched = patchNames("workbook", workbook(before), namesBetween(known, after), functions);
    expect(patched).toBe(workbook(expected));
  });
});
