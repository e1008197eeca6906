import { describe, expect, test } from "vitest";
import { startExcel } from "./start-excel";

const formula = "=WETEND.DOSE.TARGET(A1, A2)";

describe("inserting a formula", () => {
  test("fills a blank cell", async () => {
    const { fake, host } = startExcel();
    await host.insertFormula("Sheet1!B2", formula);
    expect(fake.cell("Sheet1!B2")?.formula).toBe(formula);
  });

  test.each([
    ["a value", { value: 3 }, "3"],
    ["a formula", { formula: "=A1+1", value: 4 }, "=A1+1"],
    ["a zero", { value: 0 }, "0"],
    ["FALSE", { value: false }, "false"],
    ["what spilled from another cell", { value: 7 }, "7"],
  ])("refuses a cell that holds %s, and says what stands there", async (_, cell, shown) => {
    const { fake, host } = startExcel();
    fake.put("Sheet1!B2", { ...cell });
    await expect(host.insertFormula("Sheet1!B2", formula)).rejects.toMatchObject({
      name: "HostRefusal",
      kind: "occupied",
      message: `Sheet1!B2 is not blank: it holds ${shown}. Select blank cells and try again.`,
    });
    expect(fake.cell("Sheet1!B2")).toEqual(cell);
  });

  test("replaces what the person agreed to replace", async () => {
    const { fake, host } = startExcel();
    fake.put("Sheet1!A1", { formula: "=C1", value: 4 });
    const seen = (await host.readSelection())?.cell;
    await host.insertFormula("Sheet1!A1", formula, seen);
    expect(fake.cell("Sheet1!A1")?.formula).toBe(formula);
  });

  test("does not replace what changed since the person agreed", async () => {
    const { fake, host } = startExcel();
    fake.put("Sheet1!A1", { value: 4 });
    const seen = (await host.readSelection())?.cell;
    fake.put("Sheet1!A1", { value: 5 });
    await expect(host.insertFormula("Sheet1!A1", formula, seen)).rejects.toMatchObject({
      kind: "occupied",
    });
    expect(fake.cell("Sheet1!A1")).toEqual({ value: 5 });
  });
});

describe("inserting values", () => {
  test("fills a row from the cell on and says where", async () => {
    const { fake, host } = startExcel();
    const { address } = await host.insertValues("Sheet1!B2", [
      ["Potato starch", 0.035, true, null],
    ]);
    expect(address).toBe("Sheet1!B2:E2");
    expect(["B2", "C2", "D2", "E2"].map((at) => fake.cell(`Sheet1!${at}`)?.value)).toEqual([
      "Potato starch",
      0.035,
      true,
      undefined,
    ]);
  });

  test.each([
    "=HYPERLINK(1)",
    "+A1",
    "-3 to 5",
    "@SUM(A1)",
    "0.5",
    "1e5",
    "TRUE",
    "12 May",
    "'quoted",
  ])("keeps the text %j a text", async (text) => {
    const { fake, host } = startExcel();
    await host.insertValues("Sheet1!A1", [[text]]);
    expect(fake.cell("Sheet1!A1")).toEqual({ value: text });
  });

  test("writes nothing at all where one cell of the place is taken, and names it", async () => {
    const { fake, host } = startExcel();
    fake.put("Sheet1!C3", { value: "mine" });
    await expect(
      host.insertValues("Sheet1!B2", [
        [1, 2],
        [3, 4],
      ]),
    ).rejects.toMatchObject({
      kind: "occupied",
      message: expect.stringContaining("Sheet1!C3 is not blank: it holds mine"),
    });
    expect([...(fake.sheets.get("Sheet1") ?? [])]).toEqual([["C3", { value: "mine" }]]);
  });
});

describe("inserting a table", () => {
  const table = {
    name: "ownAdditives",
    columns: ["name", "kind"],
    rows: [["My starch", "native starch"]],
  };

  test("makes a sheet table with a header", async () => {
    const { fake, host } = startExcel();
    expect(await host.insertTable("Sheet1!B2", table)).toEqual({
      address: "Sheet1!B2:C3",
      name: "ownAdditives",
    });
    expect(fake.tables).toEqual([
      { name: "ownAdditives", sheet: "Sheet1", area: { row: 1, column: 1, rows: 2, columns: 2 } },
    ]);
    expect(fake.cell("Sheet1!B3")?.value).toBe("My starch");
  });

  test("takes a free name beside tables and defined names", async () => {
    const { fake, host } = startExcel();
    await host.insertTable("Sheet1!A1", table);
    fake.names.set("OwnAdditives_2", "=1");
    await host.insertTable("Sheet1!D1", table);
    expect(fake.tables.map(({ name }) => name)).toEqual(["ownAdditives", "ownAdditives_3"]);
  });

  test("keeps out of another table, also out of its blank cells", async () => {
    const { fake, host } = startExcel();
    fake.tables.push({
      name: "log",
      sheet: "Sheet1",
      area: { row: 0, column: 0, rows: 5, columns: 5 },
    });
    await expect(host.insertTable("Sheet1!B2", table)).rejects.toMatchObject({
      kind: "occupied",
      message: expect.stringContaining("the table log"),
    });
    expect(fake.tables).toHaveLength(1);
  });

  test("is found again by its first header, with its rows", async () => {
    const { host } = startExcel();
    await host.insertTable("Sheet1!B2", table);
    await host.insertTable("Sheet1!F2", { ...table, columns: ["component", "kind"] });
    expect(await host.readTables("name")).toEqual([
      {
        name: "ownAdditives",
        address: "Sheet1!B2:C3",
        columns: ["name", "kind"],
        rows: table.rows,
      },
    ]);
    expect(await host.readTables("nothing")).toEqual([]);
  });
});
