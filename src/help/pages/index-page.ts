import { byFamily } from "../families";
import type { FunctionReference } from "../reference";
import { firstSentence } from "../wording";
import { frame } from "./frame";
import { link } from "./function-page";
import { html } from "./html";

/** The list of all functions, by family. */
export function indexPage(functions: readonly FunctionReference[]): string {
  const families = byFamily(functions);
  return frame(
    "Dosewright functions",
    html`<h1>Functions</h1>
<p class="lead">${functions.length} spreadsheet functions for dry-strength additives in papermaking: where the additive goes, what to dose, what leaves, what it is worth, and how to prove it.</p>
<nav aria-label="Families"><ul class="families">${families.map(
      ({ id, title }) => html`<li><a href="#${id.toLowerCase()}">${title}</a></li>`,
    )}</ul></nav>
${families.map(
  (family) => html`<section aria-labelledby="${family.id.toLowerCase()}">
<h2 id="${family.id.toLowerCase()}">${family.title} <span class="unit">${family.id}</span></h2>
<ul>${family.functions.map((one) => html`<li>${link(one)} <span>${firstSentence(one.description)}</span></li>`)}</ul>
</section>
`,
)}`,
  );
}
