import { OFFICIAL_LIBRARY } from "./office-library";

/**
 * The HTTP headers under which the add-in's folder is to be served. One source for the development server,
 * for the list that a build writes for the people who run the web server, and for the test that opens the
 * pages under exactly these.
 */
export interface HeaderRule {
  /** Which files, as a web server's configuration writes it: "/assets/*". The first that fits counts. */
  readonly files: string;
  readonly headers: Readonly<Record<string, string>>;
  readonly why: string;
}

export type OfficeLibraryFrom = "own" | "official";

/**
 * The web version of Excel shows the pane in a frame of these (from memory; no published list was found).
 * The desktop shows it in a window of its own.
 */
const FRAMED_BY = [
  "https://*.officeapps.live.com",
  "https://*.office.com",
  "https://*.microsoft365.com",
  "https://*.cloud.microsoft",
  "https://*.sharepoint.com",
];

/** What a page may load: its own files, and nothing of anybody else's. */
export function contentSecurityPolicy(office: OfficeLibraryFrom = "own"): string {
  const library = office === "official" ? ` ${new URL(OFFICIAL_LIBRARY).origin}` : "";
  return [
    "default-src 'none'",
    `script-src 'self'${library}`,
    // The pane's component library and office.js set styles from their scripts.
    "style-src 'self' 'unsafe-inline'",
    "img-src 'self' data: blob:",
    "font-src 'self' data:",
    "connect-src 'self'",
    "manifest-src 'self'",
    "base-uri 'none'",
    "form-action 'none'",
    `frame-ancestors 'self' ${FRAMED_BY.join(" ")}`,
  ].join("; ");
}

const everyFile = (office: OfficeLibraryFrom) => ({
  "Content-Security-Policy": contentSecurityPolicy(office),
  "X-Content-Type-Options": "nosniff",
  "Referrer-Policy": "no-referrer",
  "Permissions-Policy": "camera=(), geolocation=(), microphone=()",
});

/** The rules in the order in which they are tried. */
export function headerRules(office: OfficeLibraryFrom = "own"): readonly HeaderRule[] {
  const common = everyFile(office);
  return [
    {
      files: "/assets/*",
      headers: { ...common, "Cache-Control": "public, max-age=31536000, immutable" },
      why: "Their names carry a hash of what is in them: a new version has new names.",
    },
    {
      files: "/office/*",
      headers: { ...common, "Cache-Control": "public, max-age=86400" },
      why: "The library of Excel changes with a new build only; a day is a fair bound.",
    },
    {
      files: "/functions.*",
      headers: { ...common, "Cache-Control": "no-cache", "Access-Control-Allow-Origin": "*" },
      why: "Excel on the web reads the functions from its own origin. They are public and hold no secret.",
    },
    {
      files: "/*",
      headers: { ...common, "Cache-Control": "no-cache" },
      why: "Names that stay: the browser asks whether there is a newer one, and gets 304 if not.",
    },
  ];
}

/** The headers of one file, by its path below the folder. */
export function headersFor(path: string, office: OfficeLibraryFrom = "own") {
  const rule = headerRules(office).find(({ files }) => path.startsWith(files.replace("*", "")));
  return (rule as HeaderRule).headers;
}

/** The rules as a text for the people who run the web server. */
export function headerList(office: OfficeLibraryFrom = "own"): string {
  const rules = headerRules(office).map(({ files, headers, why }) =>
    [
      files,
      `  # ${why}`,
      ...Object.entries(headers).map(([name, value]) => `  ${name}: ${value}`),
    ].join("\n"),
  );
  return `# Headers to serve this folder with. The first rule that fits a file counts.\n\n${rules.join("\n\n")}\n`;
}
