import { readdirSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import path from "node:path";
import webpack, { type Compiler } from "webpack";
import { readPackage, type ShippedPackage } from "./licences";

const folder = path.dirname(
  createRequire(import.meta.url).resolve("@microsoft/office-js/package.json"),
);
const dist = path.join(folder, "dist");

/** Where the vendor serves the same library; a build takes one or the other. */
export const OFFICIAL_LIBRARY = "https://appsforoffice.microsoft.com/lib/1/hosted/office.js";

/** The folder of the own copy in a build, and the script in it that a page loads. */
const FOLDER = "office";
export const OWN_LIBRARY = `${FOLDER}/office.js`;

/**
 * What Excel asks of the library: the loader, one script a platform, the words of each language. Its
 * telemetry is left out. The licence allows use with the office suite only, so a build copies the files
 * and the project does not hold them.
 */
const NEEDED = /^(office|o15apptofilemappingtable|excel-\w+-16\.\d+(-core)?)\.js$/;
const WORDS = "office_strings.js";

function neededFiles(): string[] {
  return readdirSync(dist, { withFileTypes: true }).flatMap((entry) => {
    if (entry.isFile()) return NEEDED.test(entry.name) ? [entry.name] : [];
    const words = readdirSync(path.join(dist, entry.name)).includes(WORDS);
    return words ? [`${entry.name}/${WORDS}`] : [];
  });
}

/** What has to be said of the copy. */
export const officeLicence = (): ShippedPackage => readPackage(folder);

/** Copies the library into the build, byte for byte. */
export class OfficeLibrary {
  apply(compiler: Compiler): void {
    compiler.hooks.thisCompilation.tap("OfficeLibrary", (compilation) => {
      const stage = compiler.webpack.Compilation.PROCESS_ASSETS_STAGE_REPORT;
      compilation.hooks.processAssets.tap({ name: "OfficeLibrary", stage }, () => {
        for (const file of neededFiles()) {
          const bytes = readFileSync(path.join(dist, file));
          compilation.emitAsset(`${FOLDER}/${file}`, new webpack.sources.RawSource(bytes));
        }
      });
    });
  }
}
