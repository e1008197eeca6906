import { readFileSync } from "node:fs";
import type { Compiler } from "webpack";
import { functionPage, pageName } from "../help/pages/function-page";
import { indexPage } from "../help/pages/index-page";
import type { FunctionReference } from "../help/reference";
import { REFERENCE } from "./function-tables";

const STYLE = new URL("../help/pages/help.css", import.meta.url);

/** Writes the static pages of help, one a function, from the reference that FunctionTables has made. */
export class HelpPages {
  apply(compiler: Compiler): void {
    compiler.hooks.thisCompilation.tap("HelpPages", (compilation) => {
      const stage = compiler.webpack.Compilation.PROCESS_ASSETS_STAGE_ADDITIONS + 1;
      compilation.hooks.processAssets.tap({ name: "HelpPages", stage }, () => {
        const asset = compilation.getAsset(REFERENCE);
        if (asset === undefined) return;
        const functions = JSON.parse(asset.source.source().toString()) as FunctionReference[];
        const emit = (name: string, text: string) =>
          compilation.emitAsset(`help/${name}`, new compiler.webpack.sources.RawSource(text));
        emit("help.css", readFileSync(STYLE, "utf8"));
        emit("index.html", indexPage(functions));
        for (const one of functions) emit(pageName(one), functionPage(one, functions));
      });
    });
  }
}
