import type { IMutationInfo } from "@univerjs/core";
import { expect, test } from "vitest";
import type { Grid } from "../../../src/workbench/grid/grid";
import { asOneStep } from "../../../src/workbench/grid/one-step";

interface Step {
  readonly unitID: string;
  readonly undoMutations: readonly IMutationInfo[];
  readonly redoMutations: readonly IMutationInfo[];
}

type Push = (step: Step) => void;

/** The grid's list of steps to undo behind its proxy, which keeps what was read, and what does one. */
function steps() {
  const list: Step[] = [];
  const own = { pushUndoRedo: ((step) => void list.push(step)) as Push };
  const service = new Proxy({} as typeof own, {
    get: (kept) => (kept.pushUndoRedo ??= own.pushUndoRedo.bind(own)),
    set: (_, key, value) => Reflect.set(own, key, value),
  });
  const grid = { injector: { get: () => service } } as unknown as Grid;
  const carryOut = (name: string) =>
    service.pushUndoRedo({
      unitID: "book",
      undoMutations: [`${name}, second back`, `${name}, first back`].map(mutation),
      redoMutations: [`${name}, first`, `${name}, second`].map(mutation),
    });
  return { list, grid, carryOut };
}

const mutation = (id: string): IMutationInfo => ({ id, params: {} });
const ids = (mutations: readonly IMutationInfo[] = []) => mutations.map(({ id }) => id);

test("Steps that are carried out as one are undone from the last to the first.", () => {
  const { list, grid, carryOut } = steps();
  carryOut("before");
  asOneStep(grid, () => {
    carryOut("rows 8 to 9");
    carryOut("row 4");
  });
  carryOut("after");
  expect(list).toHaveLength(3);
  expect(ids(list[1]?.undoMutations)).toEqual([
    "row 4, second back",
    "row 4, first back",
    "rows 8 to 9, second back",
    "rows 8 to 9, first back",
  ]);
  expect(ids(list[1]?.redoMutations)).toEqual([
    "rows 8 to 9, first",
    "rows 8 to 9, second",
    "row 4, first",
    "row 4, second",
  ]);
});

test("What carries out nothing is no step, and what breaks off keeps those that follow apart.", () => {
  const { list, grid, carryOut } = steps();
  asOneStep(grid, () => {});
  expect(list).toEqual([]);
  const broken = () =>
    asOneStep(grid, () => {
      throw new Error("broken");
    });
  expect(broken).toThrow("broken");
  carryOut("one");
  carryOut("another");
  expect(list).toHaveLength(2);
});
