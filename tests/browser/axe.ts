import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Page } from "playwright-core";

const script = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

interface Finding {
  readonly id: string;
  readonly impact: string | null;
  readonly help: string;
  readonly nodes: readonly { readonly html: string }[];
}

/** The serious findings of axe on a page as it stands, each in a line; none is what a test wants. */
export async function seriousFindings(page: Page, within = "body"): Promise<readonly string[]> {
  // Not as a script of the page: its policy may let none in by its text.
  if (!(await page.evaluate(() => "axe" in window))) await page.evaluate(script);
  const findings = await page.evaluate(async (selector) => {
    const { axe } = window as unknown as {
      axe: { run(within: string): Promise<{ violations: Finding[] }> };
    };
    // A colour on its way from one state to the next is neither: its contrast says nothing.
    const moving = document.getAnimations().filter((one) => one instanceof CSSTransition);
    await Promise.allSettled(moving.map((one) => one.finished));
    return (await axe.run(selector)).violations;
  }, within);
  return findings
    .filter(({ impact }) => impact === "serious" || impact === "critical")
    .map(({ id, help, nodes }) => `${id}: ${help} — ${nodes.map(({ html }) => html).join(" | ")}`);
}
