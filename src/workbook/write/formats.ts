import type { Format } from "wasm-xlsxwriter";
import { type Book, type Side, type Style, sides } from "../book";
import type { Library } from "./library";

const capital = (word: string) => word.charAt(0).toUpperCase() + word.slice(1);

function formatOf(library: Library, style: Style): Format {
  const { Color, FormatAlign, FormatBorder, FormatUnderline } = library;
  const colour = (hex: string) => Color.parse(hex);
  let format = new library.Format();
  if (style.format !== undefined) format = format.setNumFormat(style.format);
  if (style.bold) format = format.setBold();
  if (style.italic) format = format.setItalic();
  if (style.underline) format = format.setUnderline(FormatUnderline.Single);
  if (style.strike) format = format.setFontStrikethrough();
  if (style.size !== undefined) format = format.setFontSize(style.size);
  if (style.ink !== undefined) format = format.setFontColor(colour(style.ink));
  if (style.fill !== undefined) format = format.setBackgroundColor(colour(style.fill));
  if (style.align === "left") format = format.setAlign(FormatAlign.Left);
  if (style.align === "center") format = format.setAlign(FormatAlign.Center);
  if (style.align === "right") format = format.setAlign(FormatAlign.Right);
  if (style.vertical === "top") format = format.setAlign(FormatAlign.Top);
  if (style.vertical === "center") format = format.setAlign(FormatAlign.VerticalCenter);
  if (style.wrap) format = format.setTextWrap();
  if (style.indent !== undefined) format = format.setIndent(style.indent);
  for (const side of sides) {
    const ink = style.border?.[side];
    if (ink === undefined) continue;
    const line = style.borderLines?.[side] ?? "thin";
    const kind = FormatBorder[capital(line) as keyof typeof FormatBorder];
    const name = capital(side) as Capitalize<Side>;
    format = format[`setBorder${name}`](kind)[`setBorder${name}Color`](colour(ink));
  }
  return format;
}

/** The package's formats by the keys of the book's styles; the plain one for cells without a key. */
export function formatsOf(library: Library, book: Book): (style: string | undefined) => Format {
  const formats = new Map<string, Format>();
  for (const [key, style] of Object.entries(book.styles))
    formats.set(key, formatOf(library, style));
  const plain = new library.Format();
  return (style) => (style === undefined ? plain : (formats.get(style) ?? plain));
}
