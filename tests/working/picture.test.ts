import { expect, test } from "vitest";
import { impossible } from "../../src/model/refusal";
import { amount, money, pictured, short, stack } from "../../src/working/picture";

test("a stacked bar is told in words: each part with its unit and its share of the whole", () => {
  const parts = [
    { label: "in the sheet", value: 6.5 },
    { label: "lost", value: 1.5 },
  ];
  expect(stack("Where it goes", "kg/t", parts).alt).toBe(
    "Where it goes: in the sheet 6.5 kg/t (81.3 %), lost 1.5 kg/t (18.8 %).",
  );
});

test("a whole of nothing has no shares", () => {
  const parts = [{ label: "lost", value: 0 }];
  expect(stack("Where it goes", "kg/t", parts).alt).toBe("Where it goes: lost 0 kg/t (0 %).");
});

test("a picture shows three figures, and whole numbers from a thousand on, with the unit where there is one", () => {
  expect(short(24.554455)).toBe("24.6");
  expect(short(999.9)).toBe("1,000");
  expect(short(15829.47)).toBe("15,829");
  expect(short(-0.60487)).toBe("−0.605");
  expect(amount(0.8234, "fraction")).toBe("0.823");
  expect(amount(12, "kg/d")).toBe("12 kg/d");
});

test("money in words is told to the cent", () => {
  expect(money(-438.5418)).toBe("−438.54 money");
});

test("a working stands without the picture that the model refuses, but hides no fault", () => {
  expect(pictured(() => stack("Whole", "kg", []))).toHaveProperty("picture.title", "Whole");
  expect(pictured(() => impossible("Too far."))).toEqual({});
  expect(() =>
    pictured(() => {
      throw new RangeError("a fault");
    }),
  ).toThrow("a fault");
});
