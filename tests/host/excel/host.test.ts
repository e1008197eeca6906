import { describe, expect, test } from "vitest";
import { layOut } from "../../../src/workbook/layout/lay-out";
import { samplePlan } from "../../workbook/sample-plan";
import { startExcel } from "./start-excel";

describe("what Excel objects to comes out as a sentence", () => {
  const calls = {
    readSelection: ({ host }: ReturnType<typeof startExcel>) => host.readSelection(),
    select: ({ host }: ReturnType<typeof startExcel>) => host.select("Sheet1!A1"),
    insertFormula: ({ host }: ReturnType<typeof startExcel>) =>
      host.insertFormula("Sheet1!A1", "=1"),
    insertValues: ({ host }: ReturnType<typeof startExcel>) =>
      host.insertValues("Sheet1!A1", [[1]]),
    insertTable: ({ host }: ReturnType<typeof startExcel>) =>
      host.insertTable("Sheet1!A1", { name: "own", columns: ["name"], rows: [["x"]] }),
    addSheets: ({ host }: ReturnType<typeof startExcel>) =>
      host.addSheets((taken) => layOut(samplePlan, taken)),
    readTables: ({ host }: ReturnType<typeof startExcel>) => host.readTables("name"),
    listFailures: ({ host }: ReturnType<typeof startExcel>) => host.listFailures(),
    recalculate: ({ host }: ReturnType<typeof startExcel>) => host.recalculate(),
    relink: ({ host }: ReturnType<typeof startExcel>) =>
      host.relink([
        {
          address: "Sheet1!A1",
          formula: "=WETEND.DOSE.PUMP(8)",
          value: "#NAME?",
          error: "#NAME?",
          lostLink: true,
        },
      ]),
  };

  test.each(Object.keys(calls) as (keyof typeof calls)[])(
    "%s while a cell is being edited",
    async (name) => {
      const excel = startExcel();
      excel.fake.failing = { code: "InvalidOperationInCellEditMode" };
      await expect(calls[name](excel)).rejects.toMatchObject({
        kind: "editing",
        message: "A cell is being edited. Press Enter or Esc, then try again.",
      });
    },
  );

  test.each(Object.keys(calls) as (keyof typeof calls)[])(
    "%s when Excel does not answer",
    async (name) => {
      const excel = startExcel();
      excel.fake.failing = { code: "GeneralException" };
      await expect(calls[name](excel)).rejects.toMatchObject({ kind: "lost" });
    },
  );

  test.each(["insertFormula", "insertValues", "insertTable"] as const)(
    "%s on a protected sheet",
    async (name) => {
      const excel = startExcel();
      excel.fake.protectedSheets.add("Sheet1");
      await expect(calls[name](excel)).rejects.toMatchObject({ kind: "protected" });
      expect(excel.fake.sheets.get("Sheet1")?.size).toBe(0);
      expect(excel.fake.tables).toEqual([]);
    },
  );

  test("a sheet that was deleted meanwhile", async () => {
    const { host } = startExcel();
    await expect(host.insertFormula("Gone!A1", "=1")).rejects.toMatchObject({
      kind: "no such place",
    });
    await expect(host.select("Gone!A1")).rejects.toMatchObject({ kind: "no such place" });
  });

  test.each(["ApiNotFound", "UnsupportedOperation", "NotImplemented"])("%s", async (code) => {
    const { fake, host } = startExcel();
    fake.failing = { code };
    await expect(host.recalculate()).rejects.toMatchObject({ kind: "unsupported" });
  });

  test("a bug stays a bug", async () => {
    const { fake, host } = startExcel();
    fake.failing = { code: "InvalidArgument" };
    await expect(host.recalculate()).rejects.toMatchObject({
      name: "Error",
      code: "InvalidArgument",
    });
  });
});

describe("what this Excel can do", () => {
  test("the newest can do everything", () => {
    expect(startExcel().host.can).toEqual({
      insertTable: true,
      addSheets: true,
      undoInOneStep: true,
      openValuesCopy: true,
      loadWithWorkbook: true,
    });
  });

  test("an old one says what it lacks", () => {
    expect(startExcel({ api: 7, sets: [] }).host.can).toEqual({
      insertTable: false,
      addSheets: false,
      undoInOneStep: false,
      openValuesCopy: false,
      loadWithWorkbook: false,
    });
  });

  test("batches are one step to undo where that can be asked for, and are not asked to be elsewhere", async () => {
    const newest = startExcel();
    await newest.host.recalculate();
    expect(newest.fake.runs).toEqual([{ mergeUndoGroup: true }]);
    const older = startExcel({ api: 19 });
    await older.host.recalculate();
    expect(older.fake.runs).toEqual([undefined]);
  });

  test("an older copy of the library beside the newest Excel promises no single step", async () => {
    const { fake, host } = startExcel();
    Object.assign(Excel, { CustomFunctionManager: {} });
    await host.recalculate();
    expect(fake.runs).toEqual([undefined]);
    expect(startExcel().host.can.undoInOneStep).toBe(true);
  });

  test("loading with the workbook is off at first, and is what was set last", async () => {
    const { host } = startExcel();
    expect(await host.loadsWithWorkbook()).toBe(false);
    await host.setLoadsWithWorkbook(true);
    expect(await host.loadsWithWorkbook()).toBe(true);
    await host.setLoadsWithWorkbook(false);
    expect(await host.loadsWithWorkbook()).toBe(false);
    expect(await startExcel({ sets: [] }).host.loadsWithWorkbook()).toBe(false);
  });

  test.each([
    ["#212121", "dark"],
    ["#FFFFFF", "light"],
    [undefined, undefined],
    ["ButtonFace", undefined],
  ])("a ground of %s is %s", (ground, theme) => {
    expect(startExcel(ground === undefined ? {} : { theme: ground }).host.theme()).toBe(theme);
  });
});

test("recalculating calls every function again", async () => {
  const { fake, host } = startExcel();
  await host.recalculate();
  expect(fake.done).toEqual(["calculate Full"]);
});

test("the calls of a cell come from the record", () => {
  const { host, record } = startExcel();
  const told: string[] = [];
  const stop = host.watchCalls((address) => told.push(address));
  const call = {
    id: "DOSE.PUMP",
    address: "Sheet1!A1",
    arguments: [],
    answer: [[1]],
    by: "cell" as const,
    values: () => [],
  };
  record.remember(call);
  stop();
  record.remember(call);
  expect(host.callsAt("Sheet1!$A$1").at(-1)).toBe(call);
  expect(told).toEqual(["Sheet1!A1"]);
});

describe("the copy with values", () => {
  const file = Uint8Array.from({ length: 20_000 }, (_, i) => i % 251);

  test("is made from the whole file and opened beside it", async () => {
    const given: Uint8Array[] = [];
    const makeValuesCopy = async (bytes: Uint8Array) => {
      given.push(bytes);
      return bytes.map((byte) => 255 - byte);
    };
    const { fake, host, office } = startExcel({ file, slice: 4096 }, { makeValuesCopy });
    await host.openValuesCopy();
    expect(given).toEqual([file]);
    expect(
      Buffer.from(fake.opened[0] ?? "", "base64").equals(
        Buffer.from(file.map((byte) => 255 - byte)),
      ),
    ).toBe(true);
    expect(office.state.closed).toBe(1);
    expect(fake.runs).toEqual([]);
  });

  test("is refused in a sentence where Excel does not hand the file over", async () => {
    const { fake, host } = startExcel();
    await expect(host.openValuesCopy()).rejects.toMatchObject({
      kind: "lost",
      message: expect.stringContaining("did not hand the workbook over"),
    });
    expect(fake.opened).toEqual([]);
  });

  test("is refused in a sentence where Excel does not open it, and the file is let go", async () => {
    const { fake, host, office } = startExcel({ file });
    fake.failing = { code: "UnsupportedOperation" };
    await expect(host.openValuesCopy()).rejects.toMatchObject({ kind: "unsupported" });
    expect(office.state.closed).toBe(1);
  });
});
