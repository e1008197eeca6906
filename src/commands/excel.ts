import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import configurations from "../../webpack.config";
import { headersFor } from "../build/headers";
import { DEVELOPMENT_ORIGIN, fillManifest } from "../build/manifest/manifest";
import { developmentCertificates } from "./certificates";
import { PortsTaken, servePages, stopWhenAsked } from "./serve-pages";
import { sideloading } from "./sideloading";

/** `npm run excel`: serves the add-in to an Excel on this machine and says how to load it there. */
const root = path.join(import.meta.dirname, "../..");
const port = Number(new URL(DEVELOPMENT_ORIGIN).port);

function writeManifest(): string {
  const manifest = path.join(root, "dist", "development.xml");
  const { version } = JSON.parse(readFileSync(path.join(root, "package.json"), "utf8"));
  const template = readFileSync(path.join(root, "manifest", "dosewright.xml"), "utf8");
  mkdirSync(path.dirname(manifest), { recursive: true });
  writeFileSync(manifest, fillManifest(template, { origin: DEVELOPMENT_ORIGIN, version }));
  return manifest;
}

async function serve(): Promise<void> {
  const { untrusted, ...certificates } = await developmentCertificates(
    path.join(root, "certificates"),
  );
  console.log("Building…");
  const { stop } = await servePages({
    parts: configurations({ origin: DEVELOPMENT_ORIGIN }),
    ports: [port],
    index: "taskpane.html",
    headersFor: (file) => ({ ...headersFor(file), "Cache-Control": "no-store" }),
    certificates,
  });
  stopWhenAsked(stop);
  console.log(sideloading({ origin: DEVELOPMENT_ORIGIN, manifest: writeManifest(), untrusted }));
}

const denied = (problem: unknown) =>
  ["EACCES", "EPERM", "EROFS"].includes((problem as NodeJS.ErrnoException).code ?? "");

/** What stands in the way on this machine is said in a sentence; a fault of the program surfaces. */
try {
  await serve();
} catch (problem) {
  if (problem instanceof PortsTaken)
    console.error(
      `${problem.message} The manifest names it: end the other program (or the other npm run excel) and try again.`,
    );
  else if (denied(problem))
    console.error(
      `Certificates and the manifest are written into ${root}, which this user may not do: ${(problem as Error).message}. Copy the project to a folder of your own.`,
    );
  else throw problem;
  process.exit(1);
}
