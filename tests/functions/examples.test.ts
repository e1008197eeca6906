import { describe, expect, test } from "vitest";
import { emulateExcel } from "../host/emulated-excel";
import { hasDigits, readPrinted, runExample } from "../host/example";

const excel = emulateExcel();

describe("every documented example runs and gives the digits that it prints", () => {
  const examples = excel.built.reference.flatMap(({ examples }) => examples);
  test.each(examples)("$formula → $answer", ({ formula, answer }) => {
    const computed = runExample(excel, formula);
    const printed = readPrinted(answer);
    expect(computed.map((line) => line.length)).toEqual(printed.map((line) => line.length));
    computed.forEach((line, r) => {
      line.forEach((cell, c) => {
        const digits = printed[r]?.[c] as string;
        expect(hasDigits(cell, digits), `cell ${r + 1}, ${c + 1}: ${cell} is not ${digits}`).toBe(
          true,
        );
      });
    });
  });
});
