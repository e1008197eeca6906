/** What a person can ask of a column, in the words of the page, and what a file says for it. */
import { errors } from "../../engine/arguments";
import { unescaped } from "../../engine/natives/wildcards";
import type {
  ChosenValues,
  Condition,
  Conditions,
  Criterion,
  Operator,
} from "../../workbook/filter";

/** How many values a condition compares with, and whether these are parts of a text. */
interface Kind {
  readonly label: string;
  readonly values: 0 | 1 | 2;
  readonly ofText?: boolean;
}

export const conditionKinds = {
  greaterThan: { label: "is greater than", values: 1 },
  greaterThanOrEqual: { label: "is at least", values: 1 },
  lessThan: { label: "is less than", values: 1 },
  lessThanOrEqual: { label: "is at most", values: 1 },
  between: { label: "is between", values: 2 },
  equal: { label: "is", values: 1 },
  notEqual: { label: "is not", values: 1 },
  contains: { label: "contains", values: 1, ofText: true },
  lacks: { label: "does not contain", values: 1, ofText: true },
  begins: { label: "begins with", values: 1, ofText: true },
  filled: { label: "is not blank", values: 0 },
  blank: { label: "is blank", values: 0 },
  error: { label: "is an error", values: 0 },
} as const satisfies Record<string, Kind>;

export type ConditionKind = keyof typeof conditionKinds;

export const kindOf = (kind: ConditionKind): Kind => conditionKinds[kind];

/** A condition as it is filled in: numbers and days as numbers are written. */
export interface Asked {
  readonly kind: ConditionKind;
  readonly values: readonly string[];
}

const chosen = (some: Partial<ChosenValues>): ChosenValues => ({
  kind: "values",
  texts: [],
  dates: [],
  blank: false,
  ...some,
});

const all = (...conditions: readonly Condition[]): Conditions => ({
  kind: "conditions",
  all: conditions.length > 1,
  conditions,
});

/** A file has no word for errors but their texts. */
const anyError = chosen({ texts: [...errors] });
const noContent = chosen({ blank: true });
const someContent = all({ operator: "notEqual", value: " " });

const escaped = (text: string) => text.replaceAll(/[~*?]/g, "~$&");

export function criterionOf({ kind, values: [first = "", second = ""] }: Asked): Criterion {
  switch (kind) {
    case "filled":
      return someContent;
    case "blank":
      return noContent;
    case "error":
      return anyError;
    case "between":
      return all(
        { operator: "greaterThanOrEqual", value: first },
        { operator: "lessThanOrEqual", value: second },
      );
    case "contains":
      return all({ operator: "equal", value: `*${escaped(first)}*` });
    case "lacks":
      return all({ operator: "notEqual", value: `*${escaped(first)}*` });
    case "begins":
      return all({ operator: "equal", value: `${escaped(first)}*` });
    default:
      return all({ operator: kind, value: isText(first) ? escaped(first) : first });
  }
}

const isText = (value: string) => Number.isNaN(Number(value));

/** Undefined for one that the page has no words for. */
export function askedOf(criterion: Criterion): Asked | undefined {
  const isSame = (other: Criterion) => JSON.stringify(criterion) === JSON.stringify(other);
  if (isSame(someContent)) return { kind: "filled", values: [] };
  if (isSame(noContent)) return { kind: "blank", values: [] };
  if (isSame(anyError)) return { kind: "error", values: [] };
  if (criterion.kind !== "conditions") return undefined;
  const [first, second] = criterion.conditions;
  const candidates: Asked[] = [];
  if (first && second) candidates.push({ kind: "between", values: [first.value, second.value] });
  else if (first) candidates.push(...singles(first));
  // Only what would be asked in the same way again is told in these words.
  return candidates.find((asked) => {
    const { conditions } = criterionOf(asked) as Conditions;
    return (
      JSON.stringify(conditions) === JSON.stringify(criterion.conditions) &&
      (conditions.length < 2 || criterion.all)
    );
  });
}

function singles({ operator, value }: Condition): Asked[] {
  const inner = unescaped(value.replace(/^\*/, "").replace(/\*$/, ""));
  const partly: Partial<Record<Operator, readonly ConditionKind[]>> = {
    equal: ["contains", "begins"],
    notEqual: ["lacks"],
  };
  return [
    { kind: operator, values: [unescaped(value)] },
    ...(partly[operator] ?? []).map((kind): Asked => ({ kind, values: [inner] })),
  ];
}
