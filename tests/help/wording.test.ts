import { expect, inject, test } from "vitest";
import { FAMILIES } from "../../src/help/families";
import { Html, html } from "../../src/help/pages/html";
import type { FunctionReference } from "../../src/help/reference";
import { printedRows, signature, splitMentions, withoutUnit } from "../../src/help/wording";

const { reference } = inject("functions");
const find = (id: string) => reference.find((one) => one.id === id) as FunctionReference;

test("a signature puts optional arguments in brackets", () => {
  expect(signature(find("DOSE.PUMP"))).toBe(
    "WETEND.DOSE.PUMP(dose, throughput, strength, [density])",
  );
});

test("an argument is described without its unit, the limits staying", () => {
  const unit = "g/L";
  const description = "Strength of the solution [g/L]; above 0.";
  expect(withoutUnit({ name: "strength", description, unit, optional: false })).toBe(
    "Strength of the solution; above 0.",
  );
});

test("a text falls into words and the functions that it names, with or without the namespace", () => {
  const area = find("PARTITION.AREA");
  const pump = find("DOSE.PUMP");
  expect(splitMentions("See PARTITION.AREA, not WETEND.DOSE.PUMP.", reference)).toEqual([
    "See ",
    area,
    ", not ",
    pump,
    ".",
  ]);
  expect(splitMentions("WETENDDEV.DOSE.PUMP", reference)).toEqual([pump]);
  expect(splitMentions("Give `batches`.", reference)).toEqual(["Give ", { code: "batches" }, "."]);
  expect(splitMentions("TAPPI T.205 is no function", reference)).toEqual([
    "TAPPI T.205 is no function",
  ]);
});

test.each([
  ["2455.4", [["2455.4"]]],
  [
    "{1,2;3,4}",
    [
      ["1", "2"],
      ["3", "4"],
    ],
  ],
  [
    '{"to sewer, in all [kg/t]",0.7;"say ""x""",1}',
    [
      ["to sewer, in all [kg/t]", "0.7"],
      ['say "x"', "1"],
    ],
  ],
  ['"one text"', [["one text"]]],
])("the printed answer %s has its rows", (answer, rows) => {
  expect(printedRows(answer)).toEqual(rows);
});

test("every function belongs to a family that has a title", () => {
  const families = FAMILIES.map(({ id }) => id);
  expect(reference.filter(({ family }) => !families.includes(family))).toEqual([]);
});

test("markup escapes texts and keeps markup", () => {
  expect(
    html`<b title="${'"&"'}">${"1 < 2"}</b>${new Html("<i></i>")}${undefined}${[html`<u></u>`, "x"]}`
      .markup,
  ).toBe('<b title="&quot;&amp;&quot;">1 &lt; 2</b><i></i><u></u>x');
});
