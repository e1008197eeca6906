import { expect, inject, test, vi } from "vitest";
import { type Bounds, recalculateBounded } from "../../../src/commands/recalculation/bounded";
import type { DefinedName } from "../../../src/workbook/book";
import { WorkbookRefusal } from "../../../src/workbook/workbook-refusal";

// Each test starts a thread, which loads the engine.
vi.setConfig({ testTimeout: 300_000 });

const { code, metadata } = inject("functions");

const computed = (formula: string, bounds?: Bounds, definedNames: DefinedName[] = []) =>
  recalculateBounded(
    {
      functions: { code, metadata },
      book: {
        sheets: [{ name: "S", cells: { 0: { 0: { value: null, formula } } } }],
        tables: [],
        styles: {},
        definedNames,
      },
      all: false,
    },
    bounds,
  );

test("a workbook is computed in a thread of its own", async () => {
  const { book, ours } = await computed("WETEND.DOSE.TARGET(6.5,0.8)");
  expect(book.sheets[0]?.cells[0]?.[0]?.value).toBe(8.125);
  expect(ours).toBe(1);
});

test("one that takes too long is stopped, and said so", async () => {
  const forever = computed("SUM(A2:XFD20000+1)", { minutes: 0.02, megabytes: 4096 });
  await expect(forever).rejects.toThrow(
    new WorkbookRefusal("The workbook takes longer than 0.02 minutes to compute."),
  );
});

test("one that takes too much memory is stopped, and said so", async () => {
  const huge = computed("SUM(A2:XFD20000+1)", { minutes: 5, megabytes: 128 });
  await expect(huge).rejects.toThrow(
    new WorkbookRefusal("The workbook takes more than 128 MB of memory to compute."),
  );
});

test("one with a formula that goes too deep is stopped, and said so", async () => {
  await expect(computed(`1${"+1".repeat(12_000)}`)).rejects.toThrow(
    new WorkbookRefusal("A formula of the workbook goes deeper than can be computed."),
  );
});

test("names that stand for themselves fail in their cells and stop nothing else", async () => {
  const names = [
    { name: "round", formula: "about" },
    { name: "about", formula: "round" },
  ];
  const { failures } = await computed("WETEND.DOSE.TARGET(round,0.8)", undefined, names);
  expect(failures.map(({ error, message }) => [error, message])).toEqual([
    ["#NAME?", expect.stringContaining("or a name that stands for itself")],
  ]);
});
