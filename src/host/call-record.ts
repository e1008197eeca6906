import type { Call } from "../cells/observer";
import type { Stop } from "./host";
import { placeKey } from "./place";

/** How many cells of arguments and answers are kept in all: some tens of megabytes. */
const MOST_CELLS = 1_000_000;

/** Milliseconds within which the calls of one function in one cell count as one computation of it. */
const ONE_COMPUTATION = 250;

/** How many calls of one function are kept of a computation: a formula seldom writes more. */
const MOST_ALIKE = 8;

/**
 * The latest calls of every cell, as the functions report them. Arguments are kept as they came, not
 * copied; when they grow beyond the bound, the cells that were computed longest ago are forgotten.
 */
export class CallRecord {
  private readonly places = new Map<string, Place>();
  private readonly listeners = new Set<(address: string) => void>();
  private cells = 0;

  constructor(
    private readonly mostCells = MOST_CELLS,
    private readonly now = () => performance.now(),
  ) {}

  /** Takes a call: hand this to the functions' `observe`. */
  readonly remember = (call: Call): void => {
    if (call.address === undefined) return;
    const key = placeKey(call.address);
    const known = this.places.get(key) ?? [];
    const place = [...known.filter(this.stays(known, call)), { call, at: this.now() }];
    this.cells += sizeOf(place) - sizeOf(known);
    this.places.delete(key);
    this.places.set(key, place);
    this.forgetOldest(key);
    for (const listener of this.listeners) listener(call.address);
  };

  /** The calls of a cell in the order in which they ended; a function that its formula writes twice has two. */
  at(address: string): readonly Call[] {
    return (this.places.get(placeKey(address)) ?? []).map(({ call }) => call);
  }

  /** Another workbook takes the place of the one that was computed. */
  forgetAll(): void {
    this.places.clear();
    this.cells = 0;
  }

  watch(listener: (address: string) => void): Stop {
    this.listeners.add(listener);
    return () => void this.listeners.delete(listener);
  }

  /** Calls of the same function stay only where they belong to the same computation of the cell. */
  private stays(known: Place, { id }: Call): (one: Kept) => boolean {
    const alike = known.filter(({ call }) => call.id === id);
    const earliest = this.now() - ONE_COMPUTATION;
    const kept = new Set(alike.filter(({ at }) => at >= earliest).slice(1 - MOST_ALIKE));
    return (one) => one.call.id !== id || kept.has(one);
  }

  private forgetOldest(latest: string): void {
    for (const [key, place] of this.places) {
      if (this.cells <= this.mostCells || key === latest) return;
      this.cells -= sizeOf(place);
      this.places.delete(key);
    }
  }
}

interface Kept {
  readonly call: Call;
  readonly at: number;
}

/** The calls of one cell. */
type Place = readonly Kept[];

const sizeOf = (place: Place) => place.reduce((sum, { call }) => sum + size(call), 0);

function size(call: Call): number {
  return [...call.arguments, call.answer].reduce<number>((sum, part) => sum + cellsOf(part), 1);
}

function cellsOf(part: unknown): number {
  if (!Array.isArray(part)) return 1;
  return Array.isArray(part[0]) ? part.length * part[0].length : part.length;
}
