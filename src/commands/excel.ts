import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import configurations from "../../webpack.config";
import { headersFor } from "../build/headers";
import { DEVELOPMENT_ORIGIN, fillManifest } from "../build/manifest/manifest";
import { developmentCertificates } from "./certificates";
import { isFree, servePages, stopWhenAsked } from "./serve-pages";
import { sideloading } from "./sideloading";

/** `npm run excel`: serves the add-in to an Excel on this machine and says how to load it there. */
const root = path.join(import.meta.dirname, "../..");
const port = Number(new URL(DEVELOPMENT_ORIGIN).port);

if (!(await isFree(port))) {
  console.error(
    `Port ${port} is taken, and the manifest names it. End the other program (or the other npm run excel) and try again.`,
  );
  process.exit(1);
}

const { untrusted, ...https } = await developmentCertificates(path.join(root, "certificates"));
const manifest = path.join(root, "dist", "development.xml");
const { version } = JSON.parse(readFileSync(path.join(root, "package.json"), "utf8"));
const template = readFileSync(path.join(root, "manifest", "dosewright.xml"), "utf8");
mkdirSync(path.dirname(manifest), { recursive: true });
writeFileSync(manifest, fillManifest(template, { origin: DEVELOPMENT_ORIGIN, version }));

console.log("Building…");
const { stop } = await servePages({
  parts: configurations({ origin: DEVELOPMENT_ORIGIN }),
  port,
  index: "taskpane.html",
  headersFor: (file) => ({ ...headersFor(file), "Cache-Control": "no-store" }),
  https,
});
stopWhenAsked(stop);
console.log(sideloading({ origin: DEVELOPMENT_ORIGIN, manifest, untrusted }));
