/** A bundle of a few functions that show what a host hands over and what it makes of an answer. */
import type { FunctionMetadata } from "../../src/build/built-functions";

const code = `var dosewright = (() => {
  const { associate, Error, ErrorCode } = CustomFunctions;
  associate("PROBE.SAME", (cells) => cells);
  associate("PROBE.THREE", (cells) => cells);
  associate("PROBE.SEEN", (range, one, invocation) => {
    const plain = (cell) => (cell instanceof Error ? "error " + cell.code : cell);
    const show = (given) => (Array.isArray(given) ? given.map((row) => row.map(plain)) : plain(given));
    return JSON.stringify([show(range), show(one), invocation.address]);
  });
  associate("PROBE.REFUSE", (cells) => {
    throw new Error(ErrorCode.notAvailable, "Nothing answers " + cells[0][0] + ".");
  });
  associate("PROBE.POSITIVE", (cells) =>
    cells.map((row) =>
      row.map((cell) =>
        cell instanceof Error || cell > 0
          ? cell
          : new Error(ErrorCode.invalidValue, "The value is " + cell + ". Give one above 0."),
      ),
    ),
  );
  associate("PROBE.ODD", (kind) => {
    if (kind === "bug") return undefined_name;
    return { ragged: [[1, 2], [3]], empty: [], nothing: null, object: {}, NaN: NaN, no: undefined }[kind];
  });
  let observer;
  return { observe: (next) => (observer = next) };
})();`;

const range = { name: "cells", description: "", dimensionality: "matrix" } as const;
const one = { name: "one", description: "" } as const;
const about = (id: string, ...parameters: FunctionMetadata["parameters"]): FunctionMetadata => ({
  id,
  name: id,
  description: "",
  helpUrl: "",
  parameters,
});

export const probe = {
  code,
  metadata: {
    functions: [
      about("PROBE.SAME", range),
      about("PROBE.THREE", range, range, range),
      about("PROBE.SEEN", range, one),
      about("PROBE.REFUSE", range),
      about("PROBE.POSITIVE", range),
      about("PROBE.ODD", one),
    ],
  },
};
