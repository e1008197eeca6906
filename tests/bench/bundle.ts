import { buildFunctions } from "../../src/build/built-functions";
import { loadFunctions } from "../../src/engine/functions";

/** The built functions as a host has them: found by id, called with cells. */
export const built = await buildFunctions();

type HostFunction = (...cells: unknown[]) => unknown;

const registered = new Map<string, HostFunction>(
  loadFunctions(built).functions.map(({ metadata, call }) => [metadata.id, call]),
);

/** What a host does for every call: finds the function by its id. */
export const find = (id: string) => registered.get(id) as HostFunction;

/** A function that returns its argument: what a call costs when nothing is computed. */
export const IDENTITY = "BENCH.IDENTITY";
registered.set(IDENTITY, (cells) => cells);

export const column = (length: number, cell: (row: number) => unknown) =>
  Array.from({ length }, (_, row) => [cell(row)]);

export const row = (...values: unknown[]) => [values];
