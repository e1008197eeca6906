import webpack, { type Compiler } from "webpack";

/** Puts a text of our own among the files of a build. */
export class WrittenFile {
  constructor(
    private readonly name: string,
    private readonly text: string,
  ) {}

  apply(compiler: Compiler): void {
    compiler.hooks.thisCompilation.tap("WrittenFile", (compilation) => {
      const stage = compiler.webpack.Compilation.PROCESS_ASSETS_STAGE_ADDITIONS;
      compilation.hooks.processAssets.tap({ name: "WrittenFile", stage }, () => {
        compilation.emitAsset(this.name, new webpack.sources.RawSource(this.text));
      });
    });
  }
}
