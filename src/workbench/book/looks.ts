/** How cells look: our styles as the grid takes them, and back. */
import {
  BooleanNumber,
  BorderStyleTypes,
  HorizontalAlign,
  type IStyleData,
  type Nullable,
  VerticalAlign,
  WrapStrategy,
} from "@univerjs/core";
import {
  type Book,
  type BorderLine,
  borderLines,
  type Side,
  type Style,
  sides,
} from "../../workbook/book";

const aligned = {
  left: HorizontalAlign.LEFT,
  center: HorizontalAlign.CENTER,
  right: HorizontalAlign.RIGHT,
} as const;

const upright = { top: VerticalAlign.TOP, center: VerticalAlign.MIDDLE } as const;

const gridSides = { left: "l", right: "r", top: "t", bottom: "b" } as const;

const gridLines: Readonly<Record<BorderLine, BorderStyleTypes>> = {
  hair: BorderStyleTypes.HAIR,
  dotted: BorderStyleTypes.DOTTED,
  dashed: BorderStyleTypes.DASHED,
  dashDot: BorderStyleTypes.DASH_DOT,
  dashDotDot: BorderStyleTypes.DASH_DOT_DOT,
  double: BorderStyleTypes.DOUBLE,
  medium: BorderStyleTypes.MEDIUM,
  mediumDashed: BorderStyleTypes.MEDIUM_DASHED,
  mediumDashDot: BorderStyleTypes.MEDIUM_DASH_DOT,
  mediumDashDotDot: BorderStyleTypes.MEDIUM_DASH_DOT_DOT,
  slantDashDot: BorderStyleTypes.SLANT_DASH_DOT,
  thick: BorderStyleTypes.THICK,
};

export function gridStyle(style: Style): IStyleData {
  const line = (side: Side) => {
    const [colour, kind] = [style.border?.[side], style.borderLines?.[side]];
    if (colour === undefined) return undefined;
    return { s: kind ? gridLines[kind] : BorderStyleTypes.THIN, cl: { rgb: colour } };
  };
  return {
    ...(style.format !== undefined && { n: { pattern: style.format } }),
    ...(style.bold && { bl: BooleanNumber.TRUE }),
    ...(style.italic && { it: BooleanNumber.TRUE }),
    ...(style.underline && { ul: { s: BooleanNumber.TRUE } }),
    ...(style.strike && { st: { s: BooleanNumber.TRUE } }),
    ...(style.size !== undefined && { fs: style.size }),
    ...(style.ink !== undefined && { cl: { rgb: style.ink } }),
    ...(style.fill !== undefined && { bg: { rgb: style.fill } }),
    ...(style.align !== undefined && { ht: aligned[style.align] }),
    ...(style.wrap && { tb: WrapStrategy.WRAP }),
    ...(style.vertical !== undefined && { vt: upright[style.vertical] }),
    ...(style.border && {
      bd: { l: line("left"), r: line("right"), t: line("top"), b: line("bottom") },
    }),
  };
}

/** A colour as "#rrggbb": the grid also writes "rgb(1, 2, 3)" and short forms. */
function colourOf(colour: Nullable<string>): string | undefined {
  if (!colour) return undefined;
  const parts = /^rgba?\((\d+),\s*(\d+),\s*(\d+)/.exec(colour);
  if (parts)
    return `#${parts
      .slice(1)
      .map((part) => Number(part).toString(16).padStart(2, "0"))
      .join("")}`;
  const short = /^#([\da-f])([\da-f])([\da-f])$/i.exec(colour);
  if (short)
    return `#${short
      .slice(1)
      .map((digit) => digit + digit)
      .join("")}`.toLowerCase();
  return /^#[\da-f]{6}$/i.test(colour) ? colour.toLowerCase() : undefined;
}

/** The looks as they come back from the grid, which rounds some and knows less than a file. */
export const shownStyles = (styles: Book["styles"]): Book["styles"] =>
  Object.fromEntries(
    Object.entries(styles).map(([key, style]) => [key, styleOf(gridStyle(style))]),
  );

function bordersOf(data: IStyleData["bd"]): Pick<Style, "border" | "borderLines"> {
  const border: Partial<Record<Side, string>> = {};
  const lines: Partial<Record<Side, BorderLine>> = {};
  for (const side of sides) {
    const its = data?.[gridSides[side]];
    const colour = colourOf(its?.cl?.rgb);
    if (!its || colour === undefined || its.s === BorderStyleTypes.NONE) continue;
    border[side] = colour;
    const line = borderLines.find((line) => gridLines[line] === its.s);
    if (line) lines[side] = line;
  }
  if (Object.keys(border).length === 0) return {};
  return { border, ...(Object.keys(lines).length > 0 && { borderLines: lines }) };
}

export function styleOf(data: IStyleData): Style {
  const align = (["left", "center", "right"] as const).find((one) => aligned[one] === data.ht);
  const vertical = (["top", "center"] as const).find((one) => upright[one] === data.vt);
  const ink = colourOf(data.cl?.rgb);
  const fill = colourOf(data.bg?.rgb);
  return {
    ...(data.n?.pattern && { format: data.n.pattern }),
    ...(data.bl === BooleanNumber.TRUE && { bold: true }),
    ...(data.it === BooleanNumber.TRUE && { italic: true }),
    ...(data.ul?.s === BooleanNumber.TRUE && { underline: true }),
    ...(data.st?.s === BooleanNumber.TRUE && { strike: true }),
    ...(data.fs !== undefined && { size: data.fs }),
    ...(ink !== undefined && { ink }),
    ...(fill !== undefined && { fill }),
    ...(align !== undefined && { align }),
    ...(vertical !== undefined && { vertical }),
    ...(data.tb === WrapStrategy.WRAP && { wrap: true }),
    ...bordersOf(data.bd),
  };
}
