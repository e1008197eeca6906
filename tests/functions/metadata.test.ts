import { expect, inject, test } from "vitest";

const { metadata, reference } = inject("functions");

test("errors in input ranges reach the functions", () => {
  expect(metadata).toMatchObject({ allowErrorForDataTypeAny: true });
});

test("every function of the metadata is described in the reference, in the same order", () => {
  expect(metadata.functions.map(({ id }) => id)).toEqual(reference.map(({ id }) => id));
});

test.each(metadata.functions)("$id has one-line texts and a help link", (one) => {
  const texts = [one.description, ...one.parameters.map(({ description }) => description)];
  for (const text of texts) expect(text).toMatch(/^[^\n]+$/);
  expect(one.helpUrl).toMatch(new RegExp(`/help/${one.id.toLowerCase()}\\.html$`));
});
