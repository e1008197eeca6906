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
  const values: Readonly<Record<string, string>> = {
    id: development ? DEVELOPMENT_ID : PRODUCTION_ID,
    version: `${version.replace(/-.*$/, "")}.0`,
    name: development ? "Dosewright (development)" : "Dosewright",
    namespace,
    origin,
  };
  return template
    .replace(/<!--[\s\S]*?-->\n?/g, "")
    .replace(/\{(\w+)\}/g, (placeholder, key: string) => attributeText(values[key] ?? placeholder));
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
