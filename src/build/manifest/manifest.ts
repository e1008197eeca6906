import { createHash } from "node:crypto";
import { NAMESPACE } from "../../help/reference";

/** Two add-ins of one id cannot stand side by side, so a development build has its own for good. */
const PRODUCTION_ID = "24a17e77-7e48-4584-9ccf-69210d43a525";
export const DEVELOPMENT_ID = "a2f75149-2cd2-4ecb-ad04-f10cd28bb78c";

/** Where the development server of the add-in listens. */
export const DEVELOPMENT_ORIGIN = "https://127.0.0.1:3443";

export interface ManifestChoices {
  /** Where the add-in is served from, without a slash at its end. */
  readonly origin: string;
  /** As package.json has it: 1.2.3. */
  readonly version: string;
  readonly namespace?: string;
}

/** The finished manifest of a build. What is served from the development server is a development build. */
export function fillManifest(
  template: string,
  { origin, version, namespace = NAMESPACE }: ManifestChoices,
): string {
  const development = origin === DEVELOPMENT_ORIGIN;
  const id = development ? DEVELOPMENT_ID : PRODUCTION_ID;
  const aside = [development ? "development" : "", namespace === NAMESPACE ? "" : namespace];
  const values: Readonly<Record<string, string>> = {
    id: namespace === NAMESPACE ? id : namedId(id, namespace),
    version: `${version.replace(/-.*$/, "")}.0`,
    name: ["Dosewright", ...aside.filter(Boolean).map((word) => `(${word})`)].join(" "),
    namespace,
    origin,
  };
  return template
    .replace(/<!--[\s\S]*?-->\n?/g, "")
    .replace(/\{(\w+)\}/g, (placeholder, key: string) => attributeText(values[key] ?? placeholder));
}

/**
 * The id of a copy with another namespace: always the same, and no other copy's. Source: RFC 9562,
 * Universally Unique IDentifiers, 5.5: version 5, from a name within the space of another id.
 */
function namedId(space: string, name: string): string {
  const spaceBytes = Buffer.from(space.replaceAll("-", ""), "hex");
  const hash = createHash("sha1").update(spaceBytes).update(name).digest().subarray(0, 16);
  hash.writeUInt8((hash.readUInt8(6) & 0x0f) | 0x50, 6);
  hash.writeUInt8((hash.readUInt8(8) & 0x3f) | 0x80, 8);
  return hash.toString("hex").replace(/^(.{8})(.{4})(.{4})(.{4})/, "$1-$2-$3-$4-");
}

const attributeText = (text: string) =>
  text.replace(/[&<"]/g, (mark) => ({ "&": "&amp;", "<": "&lt;" })[mark] ?? "&quot;");

/** The origin that a build was asked for: https, no slash at its end, no query. */
export function readOrigin(origin: string): string {
  const url = URL.canParse(origin) ? new URL(origin) : undefined;
  if (url?.protocol !== "https:" || url.search !== "" || url.hash !== "" || url.username !== "") {
    throw new Error(
      `The origin is "${origin}". Give an https address, e.g. --env origin=https://example.org/dosewright.`,
    );
  }
  return url.href.replace(/\/$/, "");
}
