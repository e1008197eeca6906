import { expect, test } from "vitest";
import { layOut } from "../../../src/workbook/layout/lay-out";
import { limitColour, palette, seriesColours } from "../../../src/workbook/layout/looks";
import type { ChartKind, Plan, SeriesPlan } from "../../../src/workbook/plan";
import { startExcel } from "./start-excel";

const planOf = (chart: ChartKind, roles: readonly SeriesPlan["role"][]): Plan => ({
  id: "drawn",
  title: "Drawn",
  question: "How does it look?",
  sheets: [
    {
      name: "Drawn",
      parts: [
        { kind: "block", at: "A1", name: "loads", rows: [[1], [2]] },
        {
          kind: "chart",
          at: "C1",
          width: 400,
          height: 300,
          chart,
          title: "Loads",
          alt: "Two loads.",
          x: { title: "Day" },
          y: { title: "Load (kg/d)" },
          series: roles.map((role, at) => ({
            name: `series ${at}`,
            values: "{loads}",
            ...(role && { role }),
          })),
        },
      ],
    },
  ],
});

/** What was set on the last of the series. */
async function lastOf(chart: ChartKind, roles: readonly SeriesPlan["role"][]) {
  const excel = startExcel();
  await excel.host.addSheets((taken) => layOut(planOf(chart, roles), taken));
  const its = `.series.add("series ${roles.length - 1}").`;
  return excel.fake.done.flatMap((line) => line.split(its)[1] ?? []);
}

test.each(["columns", "stacked columns", "full columns"] as const)(
  "a limit across %s is a dashed line over them, as in a file",
  async (chart) => {
    const set = await lastOf(chart, ["line", "limit"]);
    expect(set).toContain("chartType = Line");
    expect(set).toContain(`format.line.color = ${limitColour}`);
    expect(set).toContain("format.line.lineStyle = Dash");
    expect(set.join("\n")).not.toContain("setSolidColor");
  },
);

test("what stands beside a limit stays a column", async () => {
  const set = await lastOf("stacked columns", ["limit", "line"]);
  expect(set).toContain(`format.fill.setSolidColor("${seriesColours[1]}")`);
  expect(set.join("\n")).not.toContain("chartType");
});

test("a band is a thin grey line without marks, also among points and lines", async () => {
  const set = await lastOf("points and lines", ["line", "band"]);
  expect(set).toContain(`format.line.color = ${palette.grey}`);
  expect(set).toContain("markerStyle = None");
});

test("points of what was measured have no line", async () => {
  const set = await lastOf("curve", ["line", "measured"]);
  expect(set).toContain("format.line.lineStyle = None");
  expect(set).toContain(`markerBackgroundColor = ${seriesColours[1]}`);
});
