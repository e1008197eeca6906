import { FAMILIES } from "../families";
import type { ExampleReference, FunctionReference } from "../reference";
import {
  firstSentence,
  mentionedBy,
  printedRows,
  signature,
  splitMentions,
  withoutUnit,
} from "../wording";
import { frame } from "./frame";
import { Html, html } from "./html";

/** The name of a function's page: "dose.pump.html". The functions' help links end in it. */
export const pageName = ({ id }: Pick<FunctionReference, "id">) => `${id.toLowerCase()}.html`;

/** The page of one function. `functions` are all of them: pages link to one another. */
export function functionPage(
  one: FunctionReference,
  functions: readonly FunctionReference[],
): string {
  const text = (words: string) =>
    splitMentions(words, functions).map((piece) => {
      if (typeof piece === "string") return html`${piece}`;
      if ("code" in piece) return html`<code>${piece.code}</code>`;
      return piece.id === one.id ? html`${piece.id}` : link(piece);
    });
  const family = FAMILIES.find(({ id }) => id === one.family);
  const siblings = functions.filter(({ family, id }) => family === one.family && id !== one.id);
  const related = mentionedBy(one, functions).filter(({ family }) => family !== one.family);
  return frame(
    one.name,
    html`<p class="family">${family?.title ?? one.family}</p>
<h1>${one.name}</h1>
<p class="lead">${text(one.description)}</p>
<p class="signature"><code>${signature(one)}</code></p>
<div class="equation" tabindex="0" role="region" aria-label="Equation">${new Html(one.mathml)}</div>
${argumentTable(one, text)}
<dl>
<dt>Gives</dt><dd>${text(one.returns)}</dd>
<dt>Holds for</dt><dd>${text(one.range)}</dd>
<dt>Source</dt><dd>${text(one.source)}</dd>
</dl>
<h2>${one.examples.length === 1 ? "Example" : "Examples"}</h2>
${one.examples.map(example)}
<nav aria-label="Related functions">
<h2>See also</h2>
<ul>${[...related, ...siblings].map((other) => html`<li>${link(other)} <span>${firstSentence(other.description)}</span></li>`)}</ul>
</nav>`,
  );
}

export const link = (one: FunctionReference) => html`<a href="${pageName(one)}">${one.id}</a>`;

function argumentTable(one: FunctionReference, text: (words: string) => Html[]): Html {
  return html`<div class="scroll" tabindex="0" role="region" aria-label="Arguments">
<table class="arguments">
<caption>Arguments</caption>
<thead><tr><th scope="col">Name</th><th scope="col">Meaning</th><th scope="col">Unit</th></tr></thead>
<tbody>${one.arguments.map(
    (argument) => html`
<tr><th scope="row"><code>${argument.name}</code>${argument.optional ? html` <span class="optional">optional</span>` : undefined}</th><td>${text(withoutUnit(argument))}</td><td class="unit">${argument.choices === undefined ? argument.unit : "choice"}</td></tr>`,
  )}
</tbody>
</table>
</div>`;
}

function example({ formula, answer }: ExampleReference): Html {
  const rows = printedRows(answer);
  const isSingle = rows.length === 1 && rows[0]?.length === 1;
  return html`<figure class="example">
<pre><code>${formula}</code></pre>
${
  isSingle
    ? html`<p class="answer">gives <output>${rows[0]?.[0]}</output></p>`
    : html`<div class="scroll" tabindex="0" role="region" aria-label="Answer of the example">
<table class="answer"><caption>gives</caption><tbody>${rows.map(
        (row) => html`
<tr>${row.map((cell) => html`<td${new Html(isNumber(cell) ? ' class="number"' : "")}>${cell}</td>`)}</tr>`,
      )}
</tbody></table>
</div>`
}
</figure>
`;
}

const isNumber = (text: string) => text !== "" && Number.isFinite(Number(text));
