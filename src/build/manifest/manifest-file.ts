import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import webpack, { type Compiler } from "webpack";
import { manifestFaults } from "./check-manifest";
import { fillManifest, type ManifestChoices } from "./manifest";

/** Writes manifest.xml and the icons that it names, and fails the build where Excel would refuse them. */
export class ManifestFile {
  constructor(
    private readonly folder: string,
    private readonly choices: ManifestChoices,
  ) {}

  apply(compiler: Compiler): void {
    compiler.hooks.thisCompilation.tap("ManifestFile", (compilation) => {
      const stage = compiler.webpack.Compilation.PROCESS_ASSETS_STAGE_ADDITIONS;
      compilation.hooks.processAssets.tap({ name: "ManifestFile", stage }, () => {
        const template = path.join(this.folder, "dosewright.xml");
        compilation.fileDependencies.add(template);
        const icons = new Map(
          readdirSync(path.join(this.folder, "icons"))
            .filter((name) => name.endsWith(".png"))
            .map((name) => [`icons/${name}`, readFileSync(path.join(this.folder, "icons", name))]),
        );
        const xml = fillManifest(readFileSync(template, "utf8"), this.choices);
        const served = (url: string) => icons.get(url.slice(this.choices.origin.length + 1));
        for (const fault of manifestFaults(xml, served)) {
          compilation.errors.push(new webpack.WebpackError(`manifest: ${fault}`));
        }
        compilation.emitAsset("manifest.xml", new webpack.sources.RawSource(xml));
        for (const [name, bytes] of icons) {
          compilation.emitAsset(name, new webpack.sources.RawSource(bytes));
        }
      });
    });
  }
}
