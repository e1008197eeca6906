import path from "node:path";
import { expect, test, vi } from "vitest";
import { bundleGrid } from "../../src/build/grid-bundle";
import { packageOf } from "../../src/build/licences";

vi.setConfig({ testTimeout: 60_000 });

const entry = path.join(import.meta.dirname, "../../src/workbench/grid/grid-packages.ts");

test("what the grid's packages ask for but a page has no use for stays out of it", async () => {
  const { metafile } = await bundleGrid(entry, "/grid");
  const held = new Set<string>();
  for (const { inputs } of Object.values(metafile.outputs))
    for (const [file, { bytesInOutput }] of Object.entries(inputs)) {
      const folder = packageOf(path.resolve(file));
      if (bytesInOutput > 0 && folder !== undefined)
        held.add(folder.replaceAll("\\", "/").split("node_modules/").at(-1) as string);
    }
  expect(held).toContain("@univerjs/engine-formula");
  expect(held.size).toBeGreaterThan(20);
  // They open sockets, read the files of a machine, or make code from text.
  for (const name of ["@grpc/grpc-js", "@grpc/proto-loader", "protobufjs", "yargs", "iconv-lite"])
    expect(held).not.toContain(name);
  expect([...held].filter((name) => name.startsWith("@types/"))).toEqual([]);
});
