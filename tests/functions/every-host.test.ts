import { describe, expect, test } from "vitest";
import {
  blank,
  type EmulatedExcel,
  emulateExcel,
  errorForms,
  type HostCell,
  HostError,
} from "../host/emulated-excel";
import { exampleArguments } from "../host/example";
import { isRange, toTheEnd, turned, upright } from "../host/ranges";

/**
 * What the hosts do differently, asked of every function: the values of its documented example, handed
 * over in each of the ways in which a host may hand them over.
 */
const web = emulateExcel(null);
const desktop = emulateExcel("");
const singleBlankAsZero = emulateExcel(0);

interface Example {
  readonly id: string;
  readonly given: readonly unknown[];
  readonly arguments: readonly {
    readonly name: string;
    readonly unit: string;
    readonly optional: boolean;
  }[];
}

const examples: readonly Example[] = web.built.reference
  .filter(({ arguments: all }) => all.length > 0)
  .map(({ id, examples: written, arguments: all }) => {
    const calls = written.map(({ formula }) => exampleArguments(web, formula));
    const given = calls.find((values) => values.length > 0) ?? [];
    return { id, given: all.map((_, i) => given[i]), arguments: all };
  });

const replaced = (given: readonly unknown[], place: number, value: unknown) =>
  given.map((one, i) => (i === place ? value : one));

/** Units of what is no number: words, names, truth values, tables. */
const isNumber = (unit: string) =>
  unit !== "" && !/^(one of|text|name|number or name|exponential|TRUE|table)/.test(unit);

/** A failed sample of a simulation is left out and counted: that is what the function is for. */
const COUNTS_FAILURES = "UNCERTAINTY.SUMMARY";

/** What two ways of asking are compared by: values, and errors with their words. */
const told = (answer: HostCell[][]) =>
  answer.map((line) =>
    line.map((cell) => (cell instanceof HostError ? `${cell.code} ${cell.message}` : cell)),
  );
const ask = (excel: EmulatedExcel, id: string, given: readonly unknown[]) =>
  told(excel.callWith(id, given));
const isFailure = (cell: unknown) => typeof cell === "string" && /^#\S+[!?A] /.test(cell);

/** The first cell of an argument, changed. */
function firstCell(value: unknown, cell: unknown): unknown {
  if (!isRange(value)) return cell;
  return value.map((line, row) => (row === 0 ? [cell, ...line.slice(1)] : line));
}

describe("every function, on every host", () => {
  test.each(examples)("$id has an example that answers with values", ({ id, given }) => {
    expect(ask(web, id, given).flat().filter(isFailure)).toEqual([]);
  });

  test.each(examples)("$id takes a single cell as [[v]] and as v", ({ id, given }) => {
    const bare = given.map((value) =>
      isRange(value) && value.length === 1 && value[0]?.length === 1 ? value[0][0] : value,
    );
    expect(ask(web, id, bare)).toEqual(ask(web, id, given));
  });

  test.each(examples)("$id takes a blank cell as it takes an argument left out", (example) => {
    const { id, given } = example;
    example.arguments.forEach(({ name, optional }, place) => {
      const left = ask(web, id, replaced(given, place, undefined));
      for (const excel of [web, desktop])
        expect(ask(excel, id, replaced(given, place, blank)), name).toEqual(
          optional ? left : left.map((line) => line.map(() => expect.stringContaining(name))),
        );
    });
  });

  test.each(examples)("$id refuses a blank cell that comes as 0, or takes it for 0", (example) => {
    const { id, given } = example;
    example.arguments.forEach(({ name, unit }, place) => {
      if (!isNumber(unit) || isRange(given[place])) return;
      const zero = ask(web, id, replaced(given, place, 0));
      expect(ask(singleBlankAsZero, id, replaced(given, place, blank)), name).toEqual(zero);
    });
  });

  test.each(examples)("$id takes neither a truth value nor a text for a number", (example) => {
    const { id, given } = example;
    example.arguments.forEach(({ name, unit }, place) => {
      if (!isNumber(unit)) return;
      for (const [cell, words] of [
        [true, "is TRUE, not a number"],
        [false, "is FALSE, not a number"],
        ["6.5", "looks like a number: convert the column"],
        ["six", 'is the text "six"'],
      ] as const) {
        const answer = ask(web, id, replaced(given, place, firstCell(given[place], cell)));
        const failed = answer.flat().filter(isFailure).join("\n");
        // One cell for a vector that the example leaves out is too short before it is anything else.
        if (given[place] === undefined && /Give as many of both/.test(failed)) continue;
        expect(failed, `${name} ${cell}`).toContain(words);
        expect(failed, `${name} ${cell}`).toContain(name);
      }
    });
  });

  test.each(examples.filter(({ id }) => id !== COUNTS_FAILURES))(
    "$id hands an error of its input on, in every form",
    (example) => {
      const { id, given } = example;
      given.forEach((value, place) => {
        if (value === undefined) return;
        for (const form of errorForms("#DIV/0!")) {
          const answer = web.callWith(id, replaced(given, place, firstCell(value, form)));
          const codes = answer.flat().map((cell) => (cell instanceof HostError ? cell.code : ""));
          expect(codes, example.arguments[place]?.name).toContain("#DIV/0!");
        }
      });
    },
  );

  test.each(examples)("$id gives the same for rows and for columns", ({ id, given }) => {
    const other = ask(web, id, given.map(turned)).flat();
    // Where a column is a case a row, a row is nothing, and the answer says so.
    if (/is wider than one cell\. Give one cell, or a column/.test(String(other[0]))) return;
    expect(other).toEqual(ask(web, id, given).flat());
  });

  test.each(examples)(
    "$id gives the same for whole columns, a million blanks and all",
    ({ id, given }) => {
      const columns = given.map(upright);
      const expected = ask(web, id, columns);
      const whole = columns.map((value) =>
        isRange(value) && value.length > 1 ? toTheEnd(value, blank) : value,
      );
      for (const excel of [web, desktop]) expect(ask(excel, id, whole)).toEqual(expected);
    },
  );
});
