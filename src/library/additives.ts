import { figure } from "../model/figure";
import { type Additive, type ChargedShare, describeAdditive } from "./additive";
import { type Item, published, type Typical, typical } from "./entry";

const QUATERNARY = "C6H14NOCl";
const CARBOXYMETHYL = "C2HO2Na";
const PHOSPHATE = "NaPO3";

const STARCH_COD: Typical = [1.1, 1.0, 1.18, "medium"];
const STARCH_BOD: Typical = [0.65, 0.5, 0.8, "medium"];
const STARCH_STRENGTH: Typical = [0.03, 0.01, 0.06, "medium"];
const GUM_COD: Typical = [1.1, 1.0, 1.18, "low"];
const GUM_STRENGTH: Typical = [0.005, 0.003, 0.01, "medium"];
const POLYMER_COD: Typical = [1.2, 0.9, 1.35, "low"];
const POLYMER_BOD: Typical = [0.02, 0, 0.1, "low"];
const POLYMER_STRENGTH: Typical = [0.01, 0.003, 0.02, "medium"];

const GALACTOMANNANS =
  "Galactomannan page of dbCAN-seq, University of Nebraska (which cites Dea and Morrison 1975).";

const share = (span: Typical, unit: string, remark = "") =>
  typical(span, unit, remark) as ChargedShare;

const nativeStarch = (
  plant: string,
  solids: Typical,
  rest: Pick<Additive, "share" | "protein"> & Partial<Additive>,
): Additive => ({
  name: `Native ${plant} starch`,
  kind: "native starch",
  alsoCalled: [`${plant} starch`],
  chemistry: "Amylose and amylopectin, polymers of anhydroglucose; cooked before use",
  charge: "none",
  formula: () => "C6H10O5",
  charges: () => 0,
  dose: [10, 5, 20, "low"],
  retention: [0.15, 0.1, 0.5, "medium"],
  cod: STARCH_COD,
  bod: STARCH_BOD,
  solids,
  solidsRemark:
    "As received. Most commercial native starches hold 10 to 20 % of water (Natural Food Additives, Ingredients and Flavourings, 7.3.1).",
  strength: STARCH_STRENGTH,
  ...rest,
});

const cationicStarch = (substitution: Typical, dose: Typical, retention: Typical): Additive => ({
  name: `Cationic starch, DS ${substitution[0]}`,
  kind: "cationic starch",
  chemistry:
    "Starch ether with quaternary groups (2-hydroxy-3-trimethylammoniopropyl chloride); cooked before use",
  charge: "cationic at every pH",
  formula: (ds) => `C6H10O5(${QUATERNARY})${ds}`,
  charges: (ds) => ds,
  share: share(
    substitution,
    "groups per sugar unit",
    "Starches below 0.06 are those mainly used for paper (Chemelli et al., Carbohydrate Polymers, 2020, abstract).",
  ),
  dose,
  retention,
  cod: STARCH_COD,
  bod: STARCH_BOD,
  solids: [0.87, 0.8, 0.9, "medium"],
  strength: STARCH_STRENGTH,
});

const gum = (name: string, rest: Partial<Additive> & Pick<Additive, "chemistry">): Additive => ({
  name,
  kind: "gum",
  charge: "none",
  formula: () => "C6H10O5",
  charges: () => 0,
  dose: [2, 1, 5, "low"],
  retention: [0.7, 0.5, 0.9, "low"],
  cod: GUM_COD,
  bod: [0.5, 0.3, 0.7, "low"],
  solids: [0.9, 0.86, 0.93, "medium"],
  strength: GUM_STRENGTH,
  ...rest,
});

/** What the other monomers leave to acrylamide, in figures that stand in a formula. */
const acrylamide = (others: number) => `(C3H5NO)${figure(1 - others)}`;

const polyacrylamide = (
  name: string,
  rest: Partial<Additive> &
    Pick<Additive, "chemistry" | "charge" | "formula" | "charges" | "share" | "retention">,
): Additive => ({
  name,
  kind: "polyacrylamide",
  dose: [2, 0.5, 5, "low"],
  cod: POLYMER_COD,
  bod: POLYMER_BOD,
  solids: [0.15, 0.1, 0.25, "medium"],
  strength: POLYMER_STRENGTH,
  ...rest,
});

const WRITTEN: readonly Additive[] = [
  nativeStarch("maize", [0.88, 0.86, 0.9, "high"], {
    alsoCalled: ["maize starch", "corn starch", "native corn starch"],
    protein: published(
      [0.0006, 0.00056, 0.00062],
      "fraction",
      "Protein 0.35 to 0.39 % (Cisse et al., Journal of Applied Biosciences 66, 2013, abstract), divided by 6.25.",
    ),
  }),
  nativeStarch("potato", [0.82, 0.8, 0.84, "high"], {
    charge: "weakly anionic (phosphate)",
    formula: (ds) => `C6H10O5(${PHOSPHATE})${ds}`,
    charges: (ds) => -ds,
    share: published(
      [0.00436, 0.0037, 0.0047],
      "groups per sugar unit",
      "Phosphorus 0.083 % (Koch et al. 1982), 0.07 to 0.09 % in general, both as quoted in a later text on starch phosphorus.",
    ) as ChargedShare,
    protein: published(
      [0.0001, 0.0001, 0.0001],
      "fraction",
      "Protein about 0.06 % (Swinkels 1985, as quoted in a later text), divided by 6.25.",
    ),
  }),
  nativeStarch("wheat", [0.88, 0.86, 0.9, "high"], {
    protein: typical([0.0005, 0.0003, 0.0008, "low"], "fraction"),
  }),
  nativeStarch("tapioca", [0.87, 0.85, 0.89, "high"], {
    alsoCalled: ["tapioca starch", "cassava starch", "native cassava starch"],
    protein: typical([0.0002, 0.0001, 0.0004, "low"], "fraction"),
  }),
  cationicStarch([0.02, 0.015, 0.025, "medium"], [8, 4, 15, "medium"], [0.8, 0.7, 0.95, "medium"]),
  cationicStarch([0.035, 0.03, 0.04, "medium"], [8, 3, 15, "medium"], [0.88, 0.7, 0.98, "medium"]),
  cationicStarch([0.05, 0.045, 0.06, "medium"], [6, 2, 12, "medium"], [0.9, 0.75, 0.98, "medium"]),
  {
    name: "Anionic starch",
    kind: "anionic starch",
    chemistry: "Starch ether with sodium carboxymethyl groups; needs a cationic partner",
    charge: "anionic",
    formula: (ds) => `C6H10O5(${CARBOXYMETHYL})${ds}`,
    charges: (ds) => -ds,
    share: share([0.03, 0.01, 0.06, "low"], "groups per sugar unit"),
    dose: [8, 3, 15, "low"],
    retention: [0.7, 0.4, 0.9, "low"],
    cod: STARCH_COD,
    bod: STARCH_BOD,
    solids: [0.87, 0.8, 0.9, "medium"],
    strength: STARCH_STRENGTH,
  },
  {
    name: "Amphoteric starch",
    kind: "amphoteric starch",
    chemistry: "Cationic starch that also holds 0.01 phosphate groups a unit",
    charge: "cationic on balance",
    formula: (ds) => `C6H10O5(${QUATERNARY})${ds}(${PHOSPHATE})0.01`,
    charges: (ds) => ds - 0.01,
    share: share([0.03, 0.02, 0.04, "low"], "cationic groups per sugar unit"),
    dose: [8, 4, 15, "low"],
    retention: [0.88, 0.7, 0.98, "low"],
    cod: STARCH_COD,
    bod: STARCH_BOD,
    solids: [0.87, 0.8, 0.9, "medium"],
    strength: STARCH_STRENGTH,
  },
  gum("Guar gum", {
    alsoCalled: ["guar"],
    chemistry: "Galactomannan, about two mannose to one galactose",
    chemistrySource: GALACTOMANNANS,
  }),
  gum("Cationic guar gum", {
    alsoCalled: ["cationic guar"],
    chemistry: "Guar ether with quaternary groups",
    charge: "cationic at every pH",
    formula: (ds) => `C6H10O5(${QUATERNARY})${ds}`,
    charges: (ds) => ds,
    share: share([0.1, 0.05, 0.2, "low"], "groups per sugar unit"),
    dose: [1.5, 0.5, 4, "low"],
    retention: [0.9, 0.75, 0.98, "low"],
  }),
  gum("Locust bean gum", {
    alsoCalled: ["carob gum"],
    chemistry: "Galactomannan, about four mannose to one galactose",
    chemistrySource: GALACTOMANNANS,
  }),
  gum("Xanthan gum", {
    alsoCalled: ["xanthan"],
    chemistry: "Bacterial polysaccharide with glucuronic acid, acetate and pyruvate side groups",
    charge: "anionic",
    formula: (pyruvate) => `C30H47O26Na(C2H2O)0.9(C3HO2Na)${pyruvate}`,
    charges: (pyruvate) => -1 - pyruvate,
    share: share([0.4, 0.2, 0.6, "low"], "pyruvate groups per five sugar units"),
    dose: [1, 0.3, 3, "low"],
    retention: [0.3, 0.1, 0.6, "low"],
    cod: [0.9, 0.8, 1.0, "low"],
    bod: [0.4, 0.2, 0.6, "low"],
  }),
  {
    name: "Carboxymethyl cellulose",
    kind: "carboxymethyl cellulose",
    alsoCalled: ["CMC", "carboxymethylcellulose"],
    chemistry: "Cellulose ether, sodium salt; held by calcium, alum or a cationic partner",
    charge: "anionic",
    formula: (ds) => `C6H10O5(${CARBOXYMETHYL})${ds}`,
    charges: (ds) => -ds,
    share: share([0.7, 0.5, 0.9, "medium"], "groups per sugar unit"),
    dose: [2, 0.5, 5, "low"],
    retention: [0.5, 0.2, 0.8, "low"],
    cod: [0.95, 0.8, 1.05, "low"],
    bod: [0.1, 0.02, 0.3, "low"],
    solids: [0.92, 0.9, 0.94, "medium"],
    strength: [0.01, 0.005, 0.02, "medium"],
  },
  polyacrylamide("Cationic polyacrylamide", {
    alsoCalled: ["CPAM"],
    chemistry: "Acrylamide with acryloyloxyethyltrimethylammonium chloride",
    charge: "cationic",
    formula: (x) => `${acrylamide(x)}(C8H16NO2Cl)${x}`,
    charges: (x) => x,
    share: share([0.08, 0.03, 0.2, "low"], "mole fraction"),
    retention: [0.95, 0.9, 0.99, "low"],
  }),
  polyacrylamide("Anionic polyacrylamide", {
    alsoCalled: ["APAM"],
    chemistry: "Acrylamide with sodium acrylate; needs alum or a cationic partner",
    charge: "anionic",
    formula: (x) => `${acrylamide(x)}(C3H3O2Na)${x}`,
    charges: (x) => -x,
    share: share([0.1, 0.05, 0.2, "low"], "mole fraction"),
    retention: [0.25, 0.1, 0.4, "low"],
  }),
  polyacrylamide("Amphoteric polyacrylamide", {
    chemistry:
      "Acrylamide with acryloyloxyethyltrimethylammonium chloride and 0.03 of sodium acrylate",
    charge: "cationic on balance",
    formula: (x) => `${acrylamide(x + 0.03)}(C8H16NO2Cl)${x}(C3H3O2Na)0.03`,
    charges: (x) => x - 0.03,
    share: share([0.06, 0.04, 0.1, "low"], "mole fraction"),
    dose: [3, 1, 6, "low"],
    retention: [0.9, 0.75, 0.98, "low"],
  }),
  polyacrylamide("Glyoxalated polyacrylamide", {
    alsoCalled: ["GPAM"],
    chemistry:
      "Acrylamide with diallyldimethylammonium chloride and 0.25 of bound glyoxal; reacts with cellulose on drying",
    charge: "cationic",
    formula: (x) => `${acrylamide(x)}(C8H16NCl)${x}(C2H2O2)0.25`,
    charges: (x) => x,
    share: share([0.08, 0.03, 0.2, "low"], "mole fraction"),
    dose: [3, 1, 6, "low"],
    retention: [0.9, 0.75, 0.97, "low"],
    solids: [0.12, 0.075, 0.2, "medium"],
  }),
];

/** The additives for dry strength, in the order in which they are listed. */
export const ADDITIVES: readonly Item[] = WRITTEN.map(describeAdditive);
