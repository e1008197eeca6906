import { expect, test } from "vitest";
import {
  type Asked,
  askedOf,
  type ConditionKind,
  conditionKinds,
  criterionOf,
} from "../../../src/workbench/filtering/conditions";

const kinds = Object.keys(conditionKinds) as ConditionKind[];
const filledIn = (kind: ConditionKind): Asked => {
  const { values } = conditionKinds[kind];
  return { kind, values: ["12", "34"].slice(0, values) };
};

test.each(kinds)("what is asked by %s is told in the same words again", (kind) => {
  expect(askedOf(criterionOf(filledIn(kind)))).toEqual(filledIn(kind));
});

test("signs that stand for others are themselves in what a person writes", () => {
  for (const kind of ["equal", "contains", "begins", "lacks"] as const) {
    const asked: Asked = { kind, values: ["what? 5* ~"] };
    expect(askedOf(criterionOf(asked))).toEqual(asked);
  }
});

test("what a file may ask and the page has no words for is not told in wrong ones", () => {
  const ends = { operator: "equal", value: "*end" } as const;
  const either = { operator: "equal", value: "5" } as const;
  expect(askedOf({ kind: "conditions", all: false, conditions: [ends] })).toBeUndefined();
  expect(askedOf({ kind: "conditions", all: false, conditions: [either, either] })).toBeUndefined();
  expect(askedOf({ kind: "values", texts: ["#N/A"], dates: [], blank: false })).toBeUndefined();
  expect(askedOf({ kind: "other", xml: "" })).toBeUndefined();
});
