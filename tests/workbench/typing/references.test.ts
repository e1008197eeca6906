import { LexerTreeBuilder } from "@univerjs/engine-formula";
import { describe, expect, test } from "vitest";
import {
  referenceAt,
  referenceBefore,
  withCells,
  withoutReference,
} from "../../../src/workbench/typing/references";

const lexer = new LexerTreeBuilder();

/** The caret stands at the bar, behind a reference. */
function read(marked: string) {
  const caret = marked.indexOf("|");
  const text = marked.replace("|", "");
  const parts = lexer.sequenceNodesBuilder(text.slice(1)) ?? [];
  return { text, caret, parts };
}

const mark = ({ text, caret }: { text: string; caret: number }) =>
  `${text.slice(0, caret)}|${text.slice(caret)}`;

const cells = (
  startRow: number,
  startColumn: number,
  endRow = startRow,
  endColumn = startColumn,
) => ({
  startRow,
  startColumn,
  endRow,
  endColumn,
});

describe("other cells in the place of a reference", () => {
  test.each([
    ["=$A$1|+B2", 0, cells(4, 2), "=$C$5|+B2"],
    ["=A1|+$B2", 2, cells(10, 1), "=A1|+$B11"],
    ["=$A$1+B$2|", 0, cells(0, 0, 2, 1), "=$A$1:$B$3+B$2|"],
    ["=SUM($A1:B$2)+C3|", 2, cells(6, 6), "=SUM($G7)+C3|"],
    ["=SUM($A:$A)+C3|", 2, cells(0, 2, 999, 3), "=SUM($C:$D)+C3|"],
    ["=SUM(3:$3)*C3|", 2, cells(4, 0, 4, 19), "=SUM(5:$5)*C3|"],
    ["='Thirty days'!$B$4|*2", 0, cells(4, 1), "='Thirty days'!$B$5|*2"],
    ["=|A1+B2", 0, cells(99, 0), "=|A100+B2"],
    ["=A1|00+B2", 0, cells(1, 1), "=B2|+B2"],
  ])("%s", (before, index, to, after) => {
    const written = read(before);
    const reference = referenceAt(written.parts, index);
    if (!reference) throw new Error(`There is no reference at ${index} of ${before}.`);
    expect(mark(withCells(written, reference, to))).toBe(after);
  });
});

test.each([
  ["=$A$1+B2|*3", "=$A$1+|*3"],
  ["=$A$1|+B2", "=|+B2"],
  ["=SUM(Log!B5:B6|,1)", "=SUM(|,1)"],
])("%s is written without the reference before the caret", (before, after) => {
  const written = read(before);
  const reference = referenceAt(written.parts, referenceBefore(written.parts, written.caret));
  if (!reference) throw new Error(`There is no reference before the caret of ${before}.`);
  expect(mark(withoutReference(written, reference))).toBe(after);
});

test.each(["=A1+|B2", "=A|1", "=SUM(A1)|", "=1+2|"])("%s has none before the caret", (marked) => {
  const { parts, caret } = read(marked);
  expect(referenceBefore(parts, caret)).toBe(-1);
});
