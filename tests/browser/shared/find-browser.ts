import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import { chromium, type LaunchOptions } from "playwright-core";

/** Which browser to start, and how. */
export type FoundBrowser = Pick<LaunchOptions, "executablePath" | "channel" | "args"> & {
  readonly env?: Record<string, string>;
};

/**
 * A browser for the tests, without a download: the one named in CHROME_PATH; else the one that the
 * package @sparticuz/chromium carries (Linux on x64); else an installed Chrome or Edge.
 */
export async function findBrowser(): Promise<FoundBrowser> {
  const named = process.env.CHROME_PATH;
  if (named) return { executablePath: named };
  if (process.platform === "linux" && process.arch === "x64") return unpackCarried();
  for (const channel of ["chrome", "msedge"]) {
    const browser = await chromium.launch({ channel }).catch(() => undefined);
    await browser?.close();
    if (browser) return { channel };
  }
  throw new Error("No browser found: install Chrome or Edge, or set CHROME_PATH to a Chromium.");
}

/**
 * The package unpacks itself into TMPDIR, its libraries only where it takes the machine for one of its
 * cloud, and its list of fonts names a folder of that cloud only: without a font the browser breaks down.
 */
async function unpackCarried(): Promise<FoundBrowser> {
  const folder = mkdtempSync(path.join(os.tmpdir(), "browser-"));
  process.once("exit", () => rmSync(folder, { recursive: true, force: true }));
  writeFileSync(
    path.join(folder, "fonts.conf"),
    `<?xml version="1.0"?><!DOCTYPE fontconfig SYSTEM "fonts.dtd">
<fontconfig><dir>${folder}/fonts</dir><cachedir>${folder}/font-cache</cachedir></fontconfig>\n`,
  );
  const before = { ...process.env };
  Object.assign(process.env, {
    AWS_EXECUTION_ENV: "AWS_Lambda_nodejs20.x",
    TMPDIR: folder,
    FONTCONFIG_PATH: folder,
  });
  try {
    const { default: chromiumPackage } = await import("@sparticuz/chromium");
    const executablePath = await chromiumPackage.executablePath();
    const env = { ...process.env } as Record<string, string>;
    return { executablePath, env, args: ["--no-sandbox"] };
  } finally {
    for (const name of Object.keys(process.env)) if (!(name in before)) delete process.env[name];
    Object.assign(process.env, before);
  }
}
