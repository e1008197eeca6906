/** Colours as files name them, as "#rrggbb". */

/** By their number: light and dark, then the accents and links. */
export type Theme = readonly string[];

export const usualTheme: Theme =
  "ffffff 000000 e7e6e6 44546a 4472c4 ed7d31 a5a5a5 ffc000 5b9bd5 70ad47 0563c1 954f72".split(" ");

/** The older palette (ECMA-376 Part 1, 18.8.27). */
const indexedColours = [
  ..."000000 ffffff ff0000 00ff00 0000ff ffff00 ff00ff 00ffff".split(" "),
  ..."000000 ffffff ff0000 00ff00 0000ff ffff00 ff00ff 00ffff".split(" "),
  ..."800000 008000 000080 808000 800080 008080 c0c0c0 808080".split(" "),
  ..."9999ff 993366 ffffcc ccffff 660066 ff8080 0066cc ccccff".split(" "),
  ..."000080 ff00ff ffff00 00ffff 800080 800000 008080 0000ff".split(" "),
  ..."00ccff ccffff ccffcc ffff99 99ccff ff99cc cc99ff ffcc99".split(" "),
  ..."3366ff 33cccc 99cc00 ffcc00 ff9900 ff6600 666699 969696".split(" "),
  ..."003366 339966 003300 333300 993300 993366 333399 333333".split(" "),
];

type Attributes = Readonly<Record<string, string>>;

/** What names a colour by a theme says the colour itself: a file that is written anew has another theme. */
export function withoutTheme(attributes: Attributes, colours: Theme): Attributes {
  const { theme, tint: _, ...others } = attributes;
  const colour = theme === undefined ? undefined : colourOf(attributes, colours);
  return colour === undefined
    ? attributes
    : { ...others, rgb: `FF${colour.slice(1).toUpperCase()}` };
}

/** Undefined where the colour is the machine's own, or none that is known. */
export function colourOf(
  { rgb, theme, indexed, tint }: Attributes,
  colours: Theme = usualTheme,
): string | undefined {
  const hex = /^[\da-f]{8}$/i.test(rgb ?? "")
    ? rgb?.slice(2).toLowerCase()
    : theme !== undefined
      ? colours[Number(theme)]
      : indexedColours[Number(indexed)];
  return hex && `#${tinted(hex, Number(tint) || 0)}`;
}

/** Lighter for a tint above 0, darker for one below (ECMA-376 Part 1, 18.8.19). */
function tinted(hex: string, tint: number): string {
  if (tint === 0) return hex;
  const parts = [0, 2, 4].map((at) => Number.parseInt(hex.slice(at, at + 2), 16) / 255);
  const [most, least] = [Math.max(...parts), Math.min(...parts)];
  const light = (most + least) / 2;
  const now = tint < 0 ? light * (1 + tint) : light * (1 - tint) + tint;
  // Hue and saturation stay: every part keeps its place between the least and the most.
  const reach = (at: number) => Math.min(at, 1 - at);
  const scale = reach(light) === 0 ? 0 : reach(now) / reach(light);
  return parts
    .map((part) => Math.round(Math.min(1, Math.max(0, now + (part - light) * scale)) * 255))
    .map((part) => part.toString(16).padStart(2, "0"))
    .join("");
}
