import { type Browser, chromium } from "playwright-core";
import { inject } from "vitest";
import type { SharedName } from "./setup";

/** A browser of its own for a file of tests. */
export const openBrowser = (): Promise<Browser> => chromium.launch(inject("browser"));

/** What all files of tests share, made when the first of them asks for it. */
export async function shared(name: SharedName): Promise<string> {
  const answer = await fetch(`${inject("shared")}/${name}`);
  if (!answer.ok) throw new Error(await answer.text());
  return answer.text();
}
