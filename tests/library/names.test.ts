import { describe, expect, it } from "vitest";
import { nearestNames } from "../../src/library/names";

const NAMES = [
  "Native maize starch",
  "Guar gum",
  "Cationic guar gum",
  "Xanthan gum",
  "Kaolin",
  "Talc",
];

describe("the nearest names", () => {
  it("are found from the beginning of a text that is no name at all", () => {
    expect(nearestNames(`Guar gum ${"and so on ".repeat(10_000)}`, NAMES)).toContain("Guar gum");
  });

  it.each([
    ["Gaur", "Guar gum"],
    ["guar gumm", "Guar gum"],
    ["native corn starch", "Native maize starch"],
    ["cationic", "Cationic guar gum"],
    ["xantan", "Xanthan gum"],
    ["caolin", "Kaolin"],
    ["tlac", "Talc"],
  ])("of %s begin with %s", (wanted, nearest) => {
    expect(nearestNames(wanted, NAMES)[0]).toBe(nearest);
  });

  it("are three, or all where there are fewer", () => {
    expect(nearestNames("gum", NAMES)).toHaveLength(3);
    expect(nearestNames("gum", ["Talc"])).toEqual(["Talc"]);
    expect(nearestNames("", [])).toEqual([]);
  });
});
