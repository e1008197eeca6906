import { describe, expect, test, vi } from "vitest";
import { settled, startExcel } from "./start-excel";

describe("reading the selection", () => {
  test("gives all that is selected and its first cell with formula and value", async () => {
    const { fake, host } = startExcel();
    fake.put("'Mill log'!B4", { formula: "=WETEND.DOSE.TARGET(6, 0.75)", value: 8 });
    fake.selection = "'Mill log'!B4:B33";
    expect(await host.readSelection()).toEqual({
      address: "'Mill log'!B4:B33",
      cell: { address: "'Mill log'!B4", formula: "=WETEND.DOSE.TARGET(6, 0.75)", value: 8 },
    });
  });

  test("shows no formula for a typed value, and nothing for a blank cell", async () => {
    const { fake, host } = startExcel();
    expect((await host.readSelection())?.cell).toEqual({
      address: "Sheet1!A1",
      formula: "",
      value: null,
    });
    fake.put("Sheet1!A1", { value: 12.5 });
    expect((await host.readSelection())?.cell).toMatchObject({ formula: "", value: 12.5 });
  });

  test("says from which cell a value was spilled, where Excel tells", async () => {
    const filled = (start: ReturnType<typeof startExcel>) => {
      const spill = { rows: 3, columns: 2 };
      start.fake.put("Log!B4", { formula: "=DROP(WETEND.X(A1),1)", value: 8, spill });
      start.fake.put("Log!C6", { value: 9 });
      start.fake.selection = "Log!C6";
      return start;
    };
    const { fake, host } = filled(startExcel());
    const spilledFrom = { address: "Log!B4", formula: "=DROP(WETEND.X(A1),1)", value: 8 };
    expect((await host.readSelection())?.cell).toMatchObject({ value: 9, spilledFrom });
    fake.selection = "Log!B4";
    expect((await host.readSelection())?.cell).not.toHaveProperty("spilledFrom");
    const older = filled(startExcel({ api: 11 }));
    expect((await older.host.readSelection())?.cell).not.toHaveProperty("spilledFrom");
  });

  test("gives nothing where no cells are selected", async () => {
    const { fake, host } = startExcel();
    fake.selection = undefined;
    expect(await host.readSelection()).toBeUndefined();
  });
});

test("selecting a cell shows its sheet first", async () => {
  const { fake, host } = startExcel();
  fake.put("'Mill log'!B4", { value: 1 });
  await host.select("'Mill log'!B4");
  expect(fake.done).toEqual(["activate Mill log"]);
  expect(fake.selection).toBe("Mill log!B4");
});

describe("watching the selection", () => {
  test("tells of the first, of every new one, and of new content, but nothing twice", async () => {
    const { fake, host } = startExcel();
    const listener = vi.fn();
    host.watchSelection(listener);
    await settled();
    expect(listener).toHaveBeenCalledTimes(1);
    await fake.tell("selection");
    expect(listener).toHaveBeenCalledTimes(1);
    fake.selection = "Sheet1!C3";
    await fake.tell("selection");
    expect(listener.mock.lastCall?.[0]).toMatchObject({ address: "Sheet1!C3" });
    fake.put("Sheet1!C3", { value: 5 });
    await fake.tell("calculated");
    expect(listener.mock.lastCall?.[0]).toMatchObject({ cell: { value: 5 } });
    fake.put("Sheet1!C3", { value: 6 });
    await fake.tell("changed");
    expect(listener).toHaveBeenCalledTimes(4);
  });

  test("reads once more after a storm of events, not once for each", async () => {
    const { fake, host } = startExcel();
    host.watchSelection(() => undefined);
    await settled();
    const before = fake.runs.length;
    await Promise.all(Array.from({ length: 200 }, () => fake.tell("calculated")));
    await settled();
    expect(fake.runs.length - before).toBeLessThanOrEqual(3);
  });

  test("waits for the next event while a cell is being edited", async () => {
    const { fake, host } = startExcel();
    const listener = vi.fn();
    host.watchSelection(listener);
    await settled();
    fake.selection = "Sheet1!B2";
    fake.failing = { code: "InvalidOperationInCellEditMode" };
    await fake.tell("selection");
    expect(listener).toHaveBeenCalledTimes(1);
    fake.failing = undefined;
    await fake.tell("changed");
    expect(listener.mock.lastCall?.[0]).toMatchObject({ address: "Sheet1!B2" });
  });

  test("leaves no handler behind when it is stopped", async () => {
    const { fake, host } = startExcel();
    const listener = vi.fn();
    const stop = host.watchSelection(listener);
    await settled();
    expect([...fake.listeners.values()].map(({ size }) => size)).toEqual([1, 1, 1]);
    stop();
    await settled();
    expect([...fake.listeners.values()].map(({ size }) => size)).toEqual([0, 0, 0]);
    fake.selection = "Sheet1!D4";
    await fake.tell("selection");
    expect(listener).toHaveBeenCalledTimes(1);
  });
});
