import { createFsFromVolume, Volume } from "memfs";
import webpack from "webpack";

/** What a configuration builds, by path below its folder: nothing is written. */
export async function buildInMemory(
  configuration: webpack.Configuration,
): Promise<Readonly<Record<string, Buffer>>> {
  const compiler = webpack({ ...configuration, devtool: false });
  if (compiler === null) throw new Error("There is no configuration to build.");
  const volume = new Volume();
  compiler.outputFileSystem = createFsFromVolume(volume) as unknown as webpack.OutputFileSystem;
  const stats = await new Promise<webpack.Stats | undefined>((resolve, reject) => {
    compiler.run((problem, result) => (problem === null ? resolve(result) : reject(problem)));
  });
  const folder = compiler.outputPath;
  await new Promise<void>((resolve) => compiler.close(() => resolve()));
  if (stats === undefined || stats.hasErrors()) {
    throw new Error(stats?.toString({ all: false, errors: true }) ?? "The build gave no result.");
  }
  return Object.fromEntries(
    Object.keys(volume.toJSON(folder)).map((path) => [
      path.slice(folder.length).replace(/^\//, ""),
      volume.readFileSync(path) as Buffer,
    ]),
  );
}
