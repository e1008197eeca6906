import { figure } from "../model/figure";
import { Refusal } from "../model/refusal";

/**
 * What a picture of a result holds, in plain data: the pane draws it. Every picture has its words (`alt`),
 * for those who cannot see it.
 */
export type Picture = Stack | Curves | Bars | Flow | Distribution | Runs;

/**
 * A picture that asks the model for more than the answer did: for points beyond it. Where the model refuses
 * one of them, the working stands without its picture.
 */
export function pictured(draw: () => Picture): { readonly picture?: Picture } {
  try {
    return { picture: draw() };
  } catch (problem) {
    if (problem instanceof Refusal) return {};
    throw problem;
  }
}

interface Titled {
  readonly title: string;
  readonly alt: string;
}

/** A whole and its parts, as one bar. */
export interface Stack extends Titled {
  readonly kind: "stack";
  readonly unit: string;
  readonly parts: readonly Part[];
}

export interface Part {
  readonly label: string;
  readonly value: number;
}

/** A whole and its parts, with the words made from them. */
export function stack(title: string, unit: string, parts: readonly Part[]): Stack {
  const whole = parts.reduce((sum, { value }) => sum + value, 0);
  const words = parts.map(
    ({ label, value }) => `${label} ${amount(value, unit)} (${percent(value / whole)})`,
  );
  return { kind: "stack", title, unit, parts, alt: `${title}: ${words.join(", ")}.` };
}

/** A number with its unit, as words have it; a fraction is a share and needs none. */
export const amount = (value: number, unit: string) =>
  unit === "fraction" || unit === "" ? short(value) : `${short(value)} ${unit}`;

/** Three figures, and whole numbers from a thousand on: as much as a picture shows. */
export const short = (value: number) =>
  Math.abs(value) < 999.5
    ? figure(Number(value.toPrecision(3))).replaceAll("-", "−")
    : grouped(value, 0);

/** Money to the cent. */
export const money = (value: number) => `${grouped(value, 2)} money`;

/** A number with so many decimals, its thousands apart. */
export function grouped(value: number, decimals: number): string {
  const digits = Math.abs(value).toFixed(decimals);
  const sign = value < 0 && Number(digits) !== 0 ? "−" : "";
  return sign + (Math.abs(value) < 1e15 ? digits.replace(/\B(?=(\d{3})+(?!\d))/g, ",") : digits);
}

/** A share in words. */
export const percent = (share: number) => `${short(Number.isFinite(share) ? 100 * share : 0)} %`;

export interface Axis {
  readonly label: string;
  readonly unit: string;
  /** False where only differences count: then the axis spans what is drawn, not 0. */
  readonly fromZero?: false;
}

export type Point = readonly [x: number, y: number];

/** Enough points that a curve looks like one. */
const POINTS = 60;

/** A curve from one x to another, by points at even distance. */
export function sampled(from: number, to: number, y: (x: number) => number): readonly Point[] {
  return Array.from({ length: POINTS + 1 }, (_, i) => {
    const x = from + ((to - from) * i) / POINTS;
    return [x, y(x)];
  });
}

/** One or several curves over x, with what was measured, a band around them, and where this cell stands. */
export interface Curves extends Titled {
  readonly kind: "curves";
  readonly x: Axis;
  readonly y: Axis;
  readonly curves: readonly { readonly label: string; readonly points: readonly Point[] }[];
  readonly band?: readonly (readonly [x: number, low: number, high: number])[];
  readonly measured?: readonly Point[];
  readonly here?: Point;
  /** A level that is not to be passed, or that is aimed at. */
  readonly level?: { readonly label: string; readonly y: number };
}

/** A bar for each item; values may lie on both sides of 0, and each may have its limits. */
export interface Bars extends Titled {
  readonly kind: "bars";
  readonly unit: string;
  readonly bars: readonly (Part & { readonly low?: number; readonly high?: number })[];
}

/** Bars, with the words made from them. */
export function bars(title: string, unit: string, items: Bars["bars"]): Bars {
  const words = items.map(({ label, value, low, high }) => {
    const reach =
      low === undefined || high === undefined ? "" : ` (${short(low)} to ${short(high)})`;
    return `${label} ${amount(value, unit)}${reach}`;
  });
  return { kind: "bars", title, unit, bars: items, alt: `${title}: ${words.join(", ")}.` };
}

/** Streams between places, as thick as what they carry. */
export interface Flow extends Titled {
  readonly kind: "flow";
  readonly unit: string;
  readonly streams: readonly {
    readonly from: string;
    readonly to: string;
    readonly value: number;
  }[];
}

/** Values as they lie, with lines at what is said of them. */
export interface Distribution extends Titled {
  readonly kind: "distribution";
  readonly x: Axis;
  readonly values: readonly number[];
  readonly lines: readonly Part[];
}

/** The runs of a trial, block by block. */
export interface Runs extends Titled {
  readonly kind: "runs";
  readonly x: Axis;
  readonly y: Axis;
  readonly runs: readonly {
    readonly block: string;
    readonly run: number;
    readonly value: number;
  }[];
}
