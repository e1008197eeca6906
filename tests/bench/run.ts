import { writeFileSync } from "node:fs";
import { parseArgs } from "node:util";
import { bounds } from "./bounds";
import { elementwise } from "./elementwise";
import { mix } from "./mix";
import { partition } from "./partition";
import { start } from "./start";
import { strength } from "./strength";
import { trial } from "./trial";
import { workbench } from "./workbench";
import { workbook } from "./workbook";

/** `npm run bench [-- --json FILE]`: every limit of speed, as a ratio inside this one run. */
const { values } = parseArgs({ options: { json: { type: "string" } } });
const rows = [
  ...elementwise(),
  ...partition(),
  ...strength(),
  ...trial(),
  ...bounds(),
  ...(await mix()),
  ...(await workbook()),
  ...(await workbench()),
  ...start(),
];

const figure = (value: number) => Number(value.toPrecision(3));
console.table(
  rows.map(({ work, measured, limit, unit, note }) => ({
    work,
    measured: figure(measured),
    "at most": limit,
    unit,
    met: measured <= limit ? "yes" : "NO",
    note,
  })),
);
if (values.json !== undefined) writeFileSync(values.json, `${JSON.stringify(rows, null, 1)}\n`);
if (rows.some(({ measured, limit }) => measured > limit)) process.exitCode = 1;
