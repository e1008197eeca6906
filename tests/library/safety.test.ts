import { describe, expect, it } from "vitest";
import { ADDITIVES } from "../../src/library/additives";
import { COMPONENTS } from "../../src/library/components";
import { cautionsFor, FIRST_OF_ALL } from "../../src/library/safety";
import { TASKS } from "../../src/library/tasks";
import { expectRefusal } from "../model/expectations";

const everyName = [...TASKS, ...ADDITIVES, ...COMPONENTS].map(({ name }) => name);

describe("cautions", () => {
  it("cover the tasks around an additive", () => {
    expect(TASKS.map(({ name }) => name)).toEqual([
      "Handling powder",
      "Cooking",
      "Storage",
      "Spills",
      "Confined spaces",
      "Laboratory",
      "Effluent",
    ]);
  });

  it.each(everyName)("of %s are some, and close with what comes first of all", (name) => {
    const cautions = cautionsFor(name.toUpperCase());
    expect(cautions.length).toBeGreaterThanOrEqual(2);
    expect(cautions.at(-1)).toBe(FIRST_OF_ALL);
    expect(cautions.filter((caution) => caution === FIRST_OF_ALL)).toHaveLength(1);
  });

  it("are found by another word of the trade", () => {
    expect(cautionsFor("clay")).toEqual(cautionsFor("Kaolin"));
    expect(cautionsFor("GPAM")).toEqual(cautionsFor("Glyoxalated polyacrylamide"));
  });

  it("point only to tasks that exist", () => {
    const pointer = /\b[Ss]ee ((?:[A-Z][a-z]+(?: [a-z]+)?(?: and )?)+)/g;
    const pointed = everyName
      .flatMap((name) => cautionsFor(name))
      .flatMap((caution) => [...caution.matchAll(pointer)])
      .flatMap(([, names = ""]) => names.split(" and "));
    expect(pointed.length).toBeGreaterThan(50);
    const tasks = TASKS.map((task) => task.name);
    const astray = pointed.filter((one) => !tasks.some((task) => one.startsWith(task)));
    expect(astray).toEqual([]);
  });

  it("warn of the monomer, of glyoxal, of powder and of hot starch where they belong", () => {
    expect(cautionsFor("Cationic polyacrylamide").join(" ")).toMatch(/acrylamide.*slippery/s);
    expect(cautionsFor("Glyoxalated polyacrylamide").join(" ")).toMatch(/glyoxal/);
    expect(cautionsFor("Native wheat starch").join(" ")).toMatch(/Handling powder and Cooking/);
    expect(cautionsFor("confined spaces").join(" ")).toMatch(/Hydrogen sulphide/);
  });

  it("warn of the reagent wherever cationic groups are bound, and of each filler's own hazard", () => {
    for (const name of ["Cationic starch, DS 0.02", "Amphoteric starch", "Cationic guar gum"]) {
      expect(cautionsFor(name).join(" ")).toMatch(/cationic reagent, an epoxide/);
    }
    expect(cautionsFor("Guar gum").join(" ")).not.toMatch(/reagent/);
    expect(cautionsFor("Talc").join(" ")).toMatch(/asbestos/);
    expect(cautionsFor("Kaolin").join(" ")).not.toMatch(/asbestos|acid/);
    expect(cautionsFor("Precipitated calcium carbonate").join(" ")).toMatch(/never acid/);
    expect(cautionsFor("Storage").join(" ")).toMatch(/Biocides/);
  });

  it("of a kind are those of all its items, each said once", () => {
    expect(cautionsFor("Cationic Starch")).toEqual(cautionsFor("Cationic starch, DS 0.035"));
    expect(cautionsFor("polyacrylamide")).toEqual(
      expect.arrayContaining([...cautionsFor("Glyoxalated polyacrylamide")]),
    );
    const starches = cautionsFor("starch");
    expect(starches).toEqual(expect.arrayContaining([...cautionsFor("Native wheat starch")]));
    expect(starches).toEqual(expect.arrayContaining([...cautionsFor("cationic starch")]));
    expect(new Set(starches).size).toBe(starches.length);
    expect(starches.at(-1)).toBe(FIRST_OF_ALL);
  });

  it("are not given for a part of a word", () => {
    expectRefusal("no answer", /no cautions for "fill"/, () => cautionsFor("fill"));
  });

  it("are not made up for what the library does not know", () => {
    expectRefusal(
      "no answer",
      /no cautions for "Coking".*nearest names are: Cooking;.*tasks are: Handling powder,/,
      () => cautionsFor("Coking"),
    );
  });
});
