import path from "node:path";
import { build, type OutputFile } from "esbuild";
import type { Compiler } from "webpack";

/**
 * Bundles the grid's packages beside the page that shows them: grid.js, which lends them to the page, and
 * grid.css. They come from packages alone, so that once is enough for as long as the page is served.
 */
export class GridBundle {
  constructor(private readonly entry: string) {}

  apply(compiler: Compiler): void {
    const folder = compiler.options.output.path as string;
    let bundle: Promise<OutputFile[]> | undefined;
    compiler.hooks.beforeCompile.tap("GridBundle", () => {
      bundle ??= bundleGrid(this.entry, folder).then(({ outputFiles }) => outputFiles);
    });
    compiler.hooks.thisCompilation.tap("GridBundle", (compilation) => {
      const stage = compiler.webpack.Compilation.PROCESS_ASSETS_STAGE_ADDITIONAL;
      compilation.hooks.processAssets.tapPromise({ name: "GridBundle", stage }, async () => {
        for (const { path: file, contents } of (await bundle) ?? []) {
          const name = path.relative(folder, file).replaceAll(path.sep, "/");
          const source = new compiler.webpack.sources.RawSource(Buffer.from(contents));
          compilation.emitAsset(name, source, { minimized: true });
        }
      });
    });
  }
}

/** The bundle of what an entry imports, and (metafile) which files are in it. */
export function bundleGrid(entry: string, folder: string) {
  return build({
    entryPoints: { grid: entry },
    outdir: folder,
    chunkNames: "grid/[name]-[hash]",
    write: false,
    bundle: true,
    splitting: true,
    format: "esm",
    target: "es2022",
    minify: true,
    legalComments: "none",
    metafile: true,
    inject: [path.join(import.meta.dirname, "../workbench/typing/segmenter.ts")],
    define: { "process.env.NODE_ENV": '"production"' },
    logLevel: "silent",
  });
}

/** An import of one of the packages, for webpack: what grid.js lends under its name. */
export const lentPackage = (request = ""): string | undefined =>
  request.startsWith("@univerjs/") ? `var gridPackages[${JSON.stringify(request)}]` : undefined;
