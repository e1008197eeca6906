import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import os from "node:os";
import path from "node:path";
import type { TestProject } from "vitest/node";
import { buildBridge } from "../beside-excel/build-bridge";
import { servePane } from "../pane/serve";
import { wholeBuild } from "../whole-build";
import { startWorkbench } from "../workbench";
import { type FoundBrowser, findBrowser } from "./find-browser";

declare module "vitest" {
  interface ProvidedContext {
    browser: FoundBrowser;
    /** The address that gives the rest of what is shared. */
    shared: string;
  }
}

/** What takes long to make and serves every file, with how it is put away. */
interface Made {
  readonly value: string;
  close?(): unknown;
}

export type SharedName = "built" | "workbench" | "pane" | "bridge";

/**
 * Files of tests run in processes of their own. What costs seconds and is the same for all of them is made
 * once, in the process that they all belong to: when the first asks for it, so that a single file waits for
 * what it needs and no more.
 */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  // First, for it changes the environment for a while.
  project.provide("browser", await findBrowser());
  const makers: Readonly<Record<SharedName, () => Promise<Made>>> = {
    built: writeWholeBuild,
    workbench: runWorkbench,
    pane: async () => {
      const { origin, close } = await servePane(project.getProvidedContext().functions);
      return { value: origin, close };
    },
    bridge: async () => ({ value: await buildBridge() }),
  };
  const made = new Map<SharedName, Promise<Made>>();
  const server = createServer(async ({ url = "/" }, answer) => {
    const name = url.slice(1) as SharedName;
    if (!made.has(name)) made.set(name, makers[name]());
    try {
      answer.end((await made.get(name))?.value);
    } catch (problem) {
      answer.writeHead(500).end((problem as Error).stack);
    }
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  project.provide("shared", `http://127.0.0.1:${(server.address() as AddressInfo).port}`);
  return async () => {
    server.close();
    server.closeAllConnections();
    for (const one of await Promise.allSettled(made.values()))
      if (one.status === "fulfilled") await one.value.close?.();
  };
}

/** The folder that `npm run build` writes. */
async function writeWholeBuild(): Promise<Made> {
  const folder = mkdtempSync(path.join(os.tmpdir(), "built-"));
  for (const [name, bytes] of Object.entries(await wholeBuild())) {
    const file = path.join(folder, name);
    mkdirSync(path.dirname(file), { recursive: true });
    writeFileSync(file, bytes);
  }
  return { value: folder, close: () => rmSync(folder, { recursive: true, force: true }) };
}

async function runWorkbench(): Promise<Made> {
  const { address, stop } = await startWorkbench();
  return { value: address, close: () => stop() };
}
