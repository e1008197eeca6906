import { expect, inject, test } from "vitest";
import { pageName } from "../../src/help/pages/function-page";

const { metadata, reference, help } = inject("functions");
const links = (page: string) => [...page.matchAll(/ href="([^"#]+)"/g)].map(([, to]) => to);

test.each(metadata.functions)("the help link of $id opens a built page about it", (one) => {
  const name = new URL(one.helpUrl).pathname.replace("/help/", "");
  expect(help[name]).toContain(`<h1>WETEND.${one.id}</h1>`);
});

test.each(Object.keys(help))("every link of %s leads to a built page", (name) => {
  expect(links(help[name] as string).filter((to) => help[to as string] === undefined)).toEqual([]);
});

test("the index leads to every function, under its family", () => {
  const index = help["index.html"] as string;
  expect(reference.filter((one) => !links(index).includes(pageName(one)))).toEqual([]);
});

test.each(reference)("the page of $id says all that the reference says", (one) => {
  const page = help[pageName(one)] as string;
  const spoken = page
    .replace(/<[^>]+>/g, "")
    .replaceAll("&lt;", "<")
    .replaceAll("&gt;", ">")
    .replaceAll("&quot;", '"')
    .replaceAll("&amp;", "&");
  expect(page).toContain(one.mathml);
  for (const text of [one.description, one.returns, one.range, one.source]) {
    expect(spoken).toContain(text.replaceAll("`", ""));
  }
  for (const { name, unit, choices } of one.arguments) {
    expect(spoken).toContain(name);
    if (choices === undefined) expect(spoken).toContain(unit);
  }
  for (const { formula } of one.examples) expect(spoken).toContain(formula);
});

test("no page needs a script or another machine", () => {
  for (const page of Object.values(help))
    expect(page).not.toMatch(/<script|https?:\/\/(?!www\.w3)/);
});
