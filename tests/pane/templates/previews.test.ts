import { describe, expect, test } from "vitest";
import { boxesOf } from "../../../src/pane/templates/boxes";
import { holdingsOf } from "../../../src/pane/templates/holdings";
import { layOut } from "../../../src/workbook/layout/lay-out";
import { plans } from "../../../templates/plans";

describe.each(plans)("the template $id", (plan) => {
  test("says what each of its sheets holds", () => {
    const holdings = holdingsOf(plan);
    expect(holdings.map(({ sheet }) => sheet)).toEqual(plan.sheets.map(({ name }) => name));
    for (const { holds } of holdings) expect(holds.length).toBeGreaterThan(0);
    const charts = plan.sheets.flatMap(({ parts }) => parts.filter((p) => p.kind === "chart"));
    for (const { title, alt } of charts) {
      expect(holdings.flatMap(({ holds }) => holds)).toContain(`chart: ${title}. ${alt}`);
    }
  });

  test("has a small picture of every sheet, whose boxes lie beside one another", () => {
    for (const sheet of layOut(plan).sheets) {
      const { boxes, width, height } = boxesOf(plan, sheet);
      expect(boxes.length).toBeGreaterThan(0);
      expect(new Set(boxes.map(({ key }) => key)).size).toBe(boxes.length);
      expect(Math.min(width, height)).toBeGreaterThan(0);
      const cells = boxes.filter(({ kind }) => kind !== "chart");
      for (const one of cells) {
        const behind = cells.find((other) => other.y === one.y && other.x > one.x);
        if (behind !== undefined) expect(one.x + one.width).toBeLessThanOrEqual(behind.x + 1e-9);
      }
    }
  });
});
