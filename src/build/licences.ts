import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import webpack, { type Compilation, type Compiler, type Module } from "webpack";

/** Licences that allow anybody to use, change and hand on, as long as the notice stays. */
const PERMISSIVE = new Set([
  "0BSD",
  "Apache-2.0",
  "BSD-2-Clause",
  "BSD-3-Clause",
  "BlueOak-1.0.0",
  "CC0-1.0",
  "ISC",
  "MIT",
  "Unlicense",
  "Zlib",
]);

/** A package of somebody else's whose code is in the build. */
export interface ShippedPackage {
  readonly name: string;
  readonly version: string;
  readonly licence: string;
  /** The text that has to go along. */
  readonly text: string;
}

/** Writes licences.txt from the modules that are really in the build; a licence with strings attached fails it. */
export class Licences {
  constructor(private readonly office: ShippedPackage | undefined) {}

  apply(compiler: Compiler): void {
    compiler.hooks.thisCompilation.tap("Licences", (compilation) => {
      const stage = compiler.webpack.Compilation.PROCESS_ASSETS_STAGE_ADDITIONS;
      compilation.hooks.processAssets.tap({ name: "Licences", stage }, () => {
        const packages = shippedPackages(modulesIn(compilation));
        for (const { name, licence } of packages) {
          if (!isPermissive(licence)) {
            compilation.errors.push(new webpack.WebpackError(`licence of ${name}: ${licence}`));
          }
        }
        const text = licenceList(packages, this.office);
        compilation.emitAsset("licences.txt", new webpack.sources.RawSource(text));
      });
    });
  }
}

/** "MIT", "(MIT OR GPL-3.0)": one of the choices must be permissive. */
export function isPermissive(licence: string): boolean {
  return licence
    .replace(/[()]/g, "")
    .split(" OR ")
    .some((choice) => choice.split(" AND ").every((one) => PERMISSIVE.has(one.trim())));
}

/** The modules that some script of the build holds: what was shaken off does not ship. */
function modulesIn({ chunks, chunkGraph }: Compilation): Module[] {
  return [...chunks].flatMap((chunk) => [...chunkGraph.getChunkModulesIterable(chunk)]);
}

export function shippedPackages(modules: readonly Module[]): ShippedPackage[] {
  const folders = new Set<string>();
  for (const file of modules.flatMap(filesOf)) {
    const folder = packageOf(file);
    if (folder !== undefined) folders.add(folder);
  }
  return [...folders].map(readPackage).sort((a, b) => (a.name < b.name ? -1 : 1));
}

/** The folder of the package that a file is from; none for a file of our own. */
export const packageOf = (file: string): string | undefined =>
  /^(.*[\\/]node_modules[\\/](?:@[^\\/]+[\\/])?[^\\/]+)[\\/]/.exec(file)?.[1];

/** The source files of a module; several may have been joined into one. */
function filesOf(module: Module): string[] {
  const { resource, modules = [] } = module as { resource?: string; modules?: readonly Module[] };
  return [...(resource === undefined ? [] : [resource]), ...modules.flatMap(filesOf)];
}

export function readPackage(folder: string): ShippedPackage {
  const about = JSON.parse(readFileSync(path.join(folder, "package.json"), "utf8")) as {
    name: string;
    version: string;
    license?: string;
  };
  const file = readdirSync(folder).find((name) => /^licen[cs]e(\.|$)/i.test(name));
  const text = file === undefined ? "" : readFileSync(path.join(folder, file), "utf8");
  return { name: about.name, version: about.version, licence: about.license ?? "none", text };
}

function licenceList(packages: readonly ShippedPackage[], office: ShippedPackage | undefined) {
  const rule = "=".repeat(78);
  const entry = ({ name, version, licence, text }: ShippedPackage) =>
    [rule, `${name} ${version}`, `Licence: ${licence}`, "", text.trim(), ""].join("\n");
  const exception =
    office === undefined
      ? ""
      : `The folder office/ holds ${office.name} ${office.version}, which is the one exception: its licence\nallows use with the office suite only. Its text stands last.\n`;
  return [
    "Dosewright is under the MIT licence. It contains these packages of others, all under licences\nthat allow use, change and redistribution with their notices:\n",
    ...packages.map(({ name, version, licence }) => `  ${name} ${version} (${licence})`),
    "",
    exception,
    ...packages.map(entry),
    ...(office === undefined ? [] : [entry(office)]),
  ].join("\n");
}
