import type { Call } from "../cells/observer";
import type { Stop } from "./host";
import { placeKey } from "./place";

/** How many cells of arguments and answers are kept in all: some tens of megabytes. */
const MOST_CELLS = 1_000_000;

/**
 * The latest calls of every cell, as the functions report them. Arguments are kept as they came, not
 * copied; when they grow beyond the bound, the cells that were computed longest ago are forgotten.
 */
export class CallRecord {
  private readonly places = new Map<string, Place>();
  private readonly listeners = new Set<(address: string) => void>();
  private cells = 0;

  constructor(private readonly mostCells = MOST_CELLS) {}

  /** Takes a call: hand this to the functions' `observe`. */
  readonly remember = (call: Call): void => {
    if (call.address === undefined) return;
    const key = placeKey(call.address);
    const place = this.places.get(key) ?? new Map<string, Call>();
    this.cells += size(call) - size(place.get(call.id));
    place.delete(call.id);
    place.set(call.id, call);
    this.places.delete(key);
    this.places.set(key, place);
    this.forgetOldest(key);
    for (const listener of this.listeners) listener(call.address);
  };

  /** The calls of a cell in the order in which they ended, one for each function in it. */
  at(address: string): readonly Call[] {
    return [...(this.places.get(placeKey(address))?.values() ?? [])];
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

  private forgetOldest(latest: string): void {
    for (const [key, place] of this.places) {
      if (this.cells <= this.mostCells || key === latest) return;
      for (const call of place.values()) this.cells -= size(call);
      this.places.delete(key);
    }
  }
}

/** The calls of one cell by the id of their function. */
type Place = Map<string, Call>;

function size(call: Call | undefined): number {
  if (call === undefined) return 0;
  return [...call.arguments, call.answer].reduce<number>((sum, part) => sum + cellsOf(part), 1);
}

function cellsOf(part: unknown): number {
  if (!Array.isArray(part)) return 1;
  return Array.isArray(part[0]) ? part.length * part[0].length : part.length;
}
