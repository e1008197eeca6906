import { noAnswer } from "../model/refusal";
import { ADDITIVES } from "./additives";
import { COMPONENTS } from "./components";
import type { Item } from "./entry";
import { called, nameKey, nearestNames } from "./names";
import { TASKS } from "./tasks";

/** What every list of cautions ends with. */
export const FIRST_OF_ALL =
  "The supplier's safety data sheet, the site's rules and local law come first, and licensed people do licensed work.";

const POWDER_TO_COOK = [
  "Bought as a powder and cooked: see Handling powder and Cooking.",
  "Cooked starch that stands turns sour and gives off gases: see Storage and Confined spaces.",
];
const FOOD =
  "Paper for food: the rules by name are 21 CFR 176.170 and 176.180, EU 1935/2004 and 2023/2006, BfR XXXVI. The supplier's declaration decides.";
const LOST = "What is not retained loads the effluent: see Effluent.";
const STOCK_STANDS =
  "Stock that stands gives off hydrogen sulphide: see Storage and Confined spaces.";
const REAGENT =
  "May hold traces of the cationic reagent, an epoxide or chlorohydrin: the data sheet gives the residue and the class.";
const CARBONATE =
  "Carbonate and acid give carbon dioxide: never acid into a tank or line of carbonate; see Confined spaces.";
const POLYMER = [
  "Residual acrylamide is poisonous to nerves and a suspected cause of cancer; limits in air 0.3 mg/m³ with a warning for the skin (OSHA), 0.03 mg/m³ recommended (NIOSH). Class Carc. 1B in Europe (from memory: the data sheet decides).",
  "Acrylamide resins for food-contact paper hold below 0.2 % of monomer (21 CFR 176.110).",
  "Solutions and wet powder are extremely slippery: see Spills.",
  "Powder grades are combustible dusts: see Handling powder. Emulsion grades hold oil: keep from heat and skin.",
];

const BY_KIND: ReadonlyMap<string, readonly string[]> = new Map([
  ["native starch", [...POWDER_TO_COOK, LOST, FOOD]],
  [
    "cationic starch",
    [
      ...POWDER_TO_COOK,
      REAGENT,
      "Overdosed, it stays in the water, foams and loads the effluent: see Effluent.",
      FOOD,
    ],
  ],
  ["anionic starch", [...POWDER_TO_COOK, LOST, FOOD]],
  ["amphoteric starch", [...POWDER_TO_COOK, REAGENT, LOST, FOOD]],
  [
    "gum",
    [
      "Fine powders: see Handling powder. Dust of guar and other gums can make people allergic; stop at the first wheeze or rash.",
      "Solutions are slippery: see Spills. They rot fast: see Storage.",
      LOST,
      FOOD,
    ],
  ],
  [
    "carboxymethyl cellulose",
    [
      "A combustible dust: see Handling powder.",
      "Solutions are slippery: see Spills.",
      "Breaks down slowly in a treatment plant: what is lost shows as COD rather than BOD. See Effluent.",
      FOOD,
    ],
  ],
  ["polyacrylamide", [...POLYMER, LOST, FOOD]],
  [
    "filler",
    [
      "Mineral dust: keep below the local limits for respirable dust, and for crystalline silica where the data sheet names it.",
      "Bags and big bags are heavy and filler slurry is slippery: lift with a hoist or with two people; see Spills.",
      STOCK_STANDS,
    ],
  ],
  [
    "fibre",
    ["Dry fibre dust burns, and can explode as a cloud: see Handling powder.", STOCK_STANDS],
  ],
  ["fines", [STOCK_STANDS]],
]);

/** Cautions that belong to one item over and above those of its kind. */
const BY_NAME: ReadonlyMap<string, readonly string[]> = new Map([
  [nameKey("Cationic guar gum"), [REAGENT]],
  [nameKey("Ground calcium carbonate"), [CARBONATE]],
  [nameKey("Precipitated calcium carbonate"), [CARBONATE]],
  [nameKey("Talc"), ["Bought free of asbestos, with a certificate."]],
  [
    nameKey("Titanium dioxide"),
    ["Powder that can be breathed in: the data sheet gives its class and the limits in air."],
  ],
  [
    nameKey("Glyoxalated polyacrylamide"),
    [
      "Holds free glyoxal, which irritates and makes skin allergic; class Muta. 2 in Europe (from memory: the data sheet decides). Acid solution: protect eyes and skin.",
      "Reacts on in storage and gels when old, warm or alkaline: keep to its shelf life and vent its tank.",
    ],
  ],
]);

/** The cautions of a task, an additive, a component or a kind of them, closing with what comes first of all. */
export function cautionsFor(name: string): readonly string[] {
  const key = nameKey(name);
  const task = TASKS.find((one) => nameKey(one.name) === key);
  const items = itemsCalled(name);
  const cautions = task?.cautions ?? items.flatMap(cautionsOf);
  if (cautions.length === 0) refuseUnknown(name);
  return [...new Set(cautions), FIRST_OF_ALL];
}

const ITEMS: readonly Item[] = [...ADDITIVES, ...COMPONENTS];

/** The item of that name; else all of that kind, or of kinds that hold its words ("starch"). */
function itemsCalled(name: string): readonly Item[] {
  const item = called(name, ITEMS);
  if (item !== undefined) return [item];
  return ITEMS.filter(({ kind }) => ` ${kind} `.includes(` ${nameKey(name)} `));
}

function cautionsOf({ name, kind }: Item): readonly string[] {
  return [...(BY_NAME.get(nameKey(name)) ?? []), ...(BY_KIND.get(kind) ?? [])];
}

function refuseUnknown(name: string): never {
  const tasks = TASKS.map((one) => one.name);
  const kinds = [...BY_KIND.keys()];
  const nearest = nearestNames(name, [...tasks, ...kinds, ...ITEMS.map((one) => one.name)]);
  noAnswer(
    `There are no cautions for "${name}". The nearest names are: ${nearest.join("; ")}. The tasks are: ${tasks.join(", ")}.`,
  );
}
