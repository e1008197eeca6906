import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, test } from "vitest";
import type { Call } from "../../src/cells/observer";
import { toldFunctions } from "../../src/working";
import { emulateExcel } from "../host/emulated-excel";
import { runExample } from "../host/example";
import { callsDuring, tell } from "../working/told";
import { seriousFindings } from "./axe";
import { computeCell, LOOKS, OpenedPane, openTab, widerThan } from "./pane/open-pane";

/** The first documented example of every function, shown as the working of a cell. */
const examples = inject("functions").reference.flatMap(({ id, examples: [first] }) =>
  first !== undefined && toldFunctions().includes(id) && !first.answer.startsWith("#")
    ? [{ id, formula: first.formula }]
    : [],
);

let pane: OpenedPane;
let page: Page;
beforeAll(async () => {
  pane = await OpenedPane.start();
  page = await pane.page(LOOKS.narrow);
  await openTab(page, "Working");
});
afterAll(() => pane?.stop());

describe("the working of a documented example, in the narrowest pane", () => {
  const excel = emulateExcel();
  test.each(examples)(
    "of $id: drawn, in words, and no wider than the pane",
    async ({ id, formula }) => {
      const call = callsDuring(excel, () => runExample(excel, formula)).at(-1) as Call;
      const working = tell(call);
      await computeCell(page, "Dose!C7", formula, id, ...call.arguments);
      const panel = page.getByRole("tabpanel", { name: "Working" });
      await panel.getByRole("button", { name: `All about ${id}`, exact: true }).waitFor();
      const text = (await panel.textContent()) ?? "";
      for (const { what } of working.steps) expect(text).toContain(what);
      expect(text).not.toMatch(/NaN|undefined|Infinity/);
      const drawn = panel.getByRole("img");
      if (working.picture === undefined) {
        expect(await drawn.count()).toBe(0);
      } else {
        await drawn.waitFor();
        expect(await drawn.getAttribute("aria-label")).toBe(working.picture.alt);
        const marks = drawn.locator("rect, path:not([d='']), circle, line");
        expect(await marks.count()).toBeGreaterThan(0);
      }
      expect(await seriousFindings(page, "#panel-Working")).toEqual([]);
      expect(await widerThan(page)).toEqual([]);
      expect(pane.faults.splice(0)).toEqual([]);
    },
  );
});

test("a table that is wider than the pane shows that it goes on", async () => {
  const id = "PARTITION.ORDERED";
  const { formula = "" } = examples.find((one) => one.id === id) ?? {};
  const excel = emulateExcel();
  const call = callsDuring(excel, () => runExample(excel, formula)).at(-1) as Call;
  await computeCell(page, "Dose!C7", formula, id, ...call.arguments);
  const table = page.getByRole("region").filter({ has: page.getByRole("table") });
  await table.waitFor();
  const edge = await table.evaluate((place) => ({
    isWider: place.scrollWidth > place.clientWidth,
    shade: getComputedStyle(place).backgroundAttachment,
  }));
  expect(edge).toEqual({ isWider: true, shade: "local, local, scroll, scroll" });
});
