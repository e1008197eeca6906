import { describe, expect, test } from "vitest";
import type { FailedCell } from "../../../src/host/host";
import { startExcel } from "./start-excel";

const failed = (address: string, formula: string, error: string, lostLink = false): FailedCell => ({
  address,
  formula,
  value: error,
  error,
  lostLink,
});

describe("listing the cells that fail", () => {
  test("finds ours on every sheet, and leaves sound ones and those of others alone", async () => {
    const { fake, host } = startExcel();
    fake.put("Sheet1!A1", { formula: "=WETEND.DOSE.PUMP(8)", value: "#VALUE!" });
    fake.put("Sheet1!A2", { formula: "=WETEND.DOSE.TARGET(6,0.75)", value: 8 });
    fake.put("Sheet1!A3", { formula: "=1/0", value: "#DIV/0!" });
    fake.put("Sheet1!A4", { formula: "=OTHERWETEND.DOSE.PUMP(8)", value: "#NAME?" });
    fake.put("Sheet1!A5", { value: "=WETEND.DOSE.PUMP(8)" });
    fake.put("'Mill log'!C9", { formula: "=1+wetend.dose.target(B9,C4)", value: "#N/A" });
    expect(await host.listFailures()).toEqual([
      failed("Sheet1!A1", "=WETEND.DOSE.PUMP(8)", "#VALUE!"),
      failed("'Mill log'!C9", "=1+wetend.dose.target(B9,C4)", "#N/A"),
    ]);
  });

  test("finds the cells of a spilled answer that fail while the first is sound", async () => {
    const { fake, host } = startExcel();
    const formula = "=WETEND.DOSE.TARGET(A1:A3,0.75)";
    fake.put("Sheet1!B1", { formula, value: 8, spill: { rows: 3, columns: 1 } });
    fake.put("Sheet1!B2", { value: "#VALUE!" });
    fake.put("Sheet1!B3", { value: 9 });
    expect(await host.listFailures()).toEqual([
      { ...failed("Sheet1!B2", formula, "#VALUE!"), spilledFrom: "Sheet1!B1" },
    ]);
  });

  test("works where Excel does not tell of spills yet", async () => {
    const { fake, host } = startExcel({ api: 11 });
    fake.put("Sheet1!A1", { formula: "=WETEND.DOSE.PUMP(8)", value: "#VALUE!" });
    expect(await host.listFailures()).toHaveLength(1);
  });

  test("gives none for a workbook without formulas", async () => {
    const { host } = startExcel();
    expect(await host.listFailures()).toEqual([]);
  });
});

describe("repairing lost links", () => {
  test("enters the formula again, under the name that people see", async () => {
    const { fake, host } = startExcel();
    fake.put("Sheet1!A1", { formula: "=_xldudf_WETEND_DOSE_PUMP(8,B1,0.03)", value: "#NAME?" });
    fake.put("Sheet1!A2", { formula: "=WETEND.DOSE.TARGET(6,0.75)", value: "#NAME?" });
    fake.compute = () => 8;
    const cells = await host.listFailures();
    expect(cells.map(({ lostLink }) => lostLink)).toEqual([true, true]);
    expect(await host.relink(cells)).toEqual([]);
    expect(fake.cell("Sheet1!A1")).toEqual({ formula: "=WETEND.DOSE.PUMP(8,B1,0.03)", value: 8 });
    expect(fake.cell("Sheet1!A2")).toEqual({ formula: "=WETEND.DOSE.TARGET(6,0.75)", value: 8 });
  });

  test("leaves cells with an error of another kind as they are", async () => {
    const { fake, host } = startExcel();
    fake.put("Sheet1!A1", { formula: "=WETEND.DOSE.PUMP(8)", value: "#VALUE!" });
    await host.relink(await host.listFailures());
    expect(fake.cell("Sheet1!A1")?.value).toBe("#VALUE!");
  });

  test("does not touch a spilled cell whose error came through an input", async () => {
    const { fake, host } = startExcel();
    const formula = "=WETEND.DOSE.TARGET(A1:A2,0.75)";
    fake.put("Sheet1!B1", { formula, value: 8, spill: { rows: 2, columns: 1 } });
    fake.put("Sheet1!B2", { value: "#NAME?" });
    const cells = await host.listFailures();
    expect(cells).toMatchObject([failed("Sheet1!B2", formula, "#NAME?")]);
    await host.relink(cells);
    expect(fake.cell("Sheet1!B2")).toEqual({ value: "#NAME?" });
  });

  test("does not overwrite a cell that holds something else by now", async () => {
    const { fake, host } = startExcel();
    fake.put("Sheet1!A1", { formula: "=WETEND.DOSE.PUMP(8)", value: "#NAME?" });
    const cells = await host.listFailures();
    fake.put("Sheet1!A1", { value: "a note" });
    await host.relink(cells);
    expect(fake.cell("Sheet1!A1")).toEqual({ value: "a note" });
  });

  test("waits while the functions still compute, and tells what fails after all", async () => {
    const { fake, host } = startExcel();
    fake.put("Sheet1!A1", { formula: "=WETEND.DOSE.PUMP(8)", value: "#NAME?" });
    fake.compute = () => "#BUSY!";
    const cells = await host.listFailures();
    setTimeout(
      () => fake.put("Sheet1!A1", { formula: "=WETEND.DOSE.PUMP(8)", value: "#VALUE!" }),
      150,
    );
    expect(await host.relink(cells)).toEqual([
      failed("Sheet1!A1", "=WETEND.DOSE.PUMP(8)", "#VALUE!"),
    ]);
  });
});
