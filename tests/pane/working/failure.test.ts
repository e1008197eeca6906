import { expect, test } from "vitest";
import type { Call } from "../../../src/cells/observer";
import {
  cellsTaken,
  failedArguments,
  failureOf,
  inTwo,
  sheetFailure,
} from "../../../src/pane/working/failure";
import { column, emulateExcel, HostError } from "../../host/emulated-excel";

const excel = emulateExcel();

function callOf(id: string, ...given: unknown[]): Call {
  const calls: Call[] = [];
  excel.dosewright.observe((call) => calls.push(call as Call));
  excel.call(id, ...given);
  excel.dosewright.observe(undefined);
  return calls[0] as Call;
}

test("a failed cell has its code, what is wrong, and how to mend it", () => {
  expect(failureOf(callOf("DOSE.TARGET", 6.5, 82), 0, 0)).toEqual({
    code: "#VALUE!",
    wrong: "overallRetention is 82.",
    mend: "Give a fraction above 0, up to 1, e.g. 0.03 for 3 %.",
  });
});

test("of a column only the cells that failed have a failure", () => {
  const call = callOf("DOSE.TARGET", column(6.5, -1), 0.5);
  expect(failureOf(call, 0, 0)).toBeUndefined();
  expect(failureOf(call, 1, 0)?.wrong).toBe("retained is -1.");
});

test("an error that came in with an argument leads to that argument", () => {
  const call = callOf("DOSE.TARGET", 6.5, new HostError("#DIV/0!"));
  expect(failureOf(call, 0, 0)).toMatchObject({
    code: "#DIV/0!",
    wrong: "A cell that this formula takes holds #DIV/0!.",
  });
  expect(failedArguments(call, 0, 0)).toEqual([1]);
});

test("a host that knows where the error arose has the word", () => {
  const call = callOf("DOSE.TARGET", 6.5, new HostError("#VALUE!", "The error comes from J10."));
  expect(failureOf(call, 0, 0)?.wrong).toBe("The error comes from J10.");
  const reason = "From Permit!I10: limit has 2 rows. Give 1.";
  expect(failureOf(call, 0, 0, reason)).toEqual({
    code: "#VALUE!",
    wrong: "From Permit!I10: limit has 2 rows.",
    mend: "Give 1.",
  });
  expect(failureOf(callOf("DOSE.TARGET", 6.5, 0.5), 0, 0, reason)).toBeUndefined();
});

test("in a column an error counts for its own row, and the row has its own cells", () => {
  const call = callOf("DOSE.TARGET", column(6.5, 7), column(new HostError("#N/A"), null));
  expect(failedArguments(call, 0, 0)).toEqual([1]);
  expect(failedArguments(call, 1, 0)).toEqual([]);
  expect(cellsTaken(call, 0, 1, 0)).toEqual([7]);
  expect(cellsTaken(call, 1, 1, 0)).toEqual([null]);
});

test.each([
  ["A is 1.5. Give 2.", "A is 1.5.", "Give 2."],
  ["All is lost.", "All is lost.", ""],
  ['It has no "x". "Y" is near.', 'It has no "x".', '"Y" is near.'],
])("the message %s says two things", (message, wrong, mend) => {
  expect(inTwo(message)).toEqual({ wrong, mend });
});

test("errors of the sheet itself are explained, too", () => {
  expect(sheetFailure("#NAME?").wrong).toContain("lost its link");
  expect(sheetFailure("#NUM!").wrong).toBe("The cell shows #NUM!.");
});
