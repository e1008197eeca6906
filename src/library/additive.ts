import { molarMass, readFormula } from "../model/effluent/chemical-formula";
import { ELEMENTS } from "../model/effluent/elements";
import { theoreticalOxygenDemand } from "../model/effluent/oxygen-demand";
import {
  computed,
  described,
  type Entry,
  type Item,
  type Span,
  type Typical,
  typical,
} from "./entry";

/** A share of charged groups or of charged monomer. */
export type ChargedShare = Entry & { readonly value: number };

/** What is written down of an additive; the computed properties follow from its formula. */
export interface Additive {
  readonly name: string;
  readonly kind: string;
  /** Other words of the trade for it. */
  readonly alsoCalled?: readonly string[];
  readonly chemistry: string;
  /** Where the chemistry was read; from memory if absent. */
  readonly chemistrySource?: string;
  readonly charge: string;
  /** Formula of the repeat unit, by the share of charged groups. */
  readonly formula: (share: number) => string;
  /** Charges on the repeat unit, by the same share; cationic counts positive. */
  readonly charges: (share: number) => number;
  /** Charged groups a sugar unit, or mole fraction of charged monomer. */
  readonly share?: ChargedShare;
  /** Nitrogen of an additive whose formula holds none: its protein. */
  readonly protein?: Entry;
  readonly dose: Typical;
  readonly retention: Typical;
  readonly cod: Typical;
  readonly bod: Typical;
  readonly solids: Typical;
  readonly solidsRemark?: string;
  readonly strength: Typical;
}

const SUBSTITUTION = "degree of substitution";
const CHARGED_MONOMER = "charged monomer";
const MEQ_PER_MOL = 1000;

const NO_SHARE: Span = [0, 0, 0];
const STOICHIOMETRY = "Stoichiometry of the formula, atomic masses of IUPAC/CIAAW.";
const THEORETICAL = `${STOICHIOMETRY} Theoretical, above what is measured.`;

/** Everything that the library says of an additive. */
export function describeAdditive(additive: Additive): Item {
  const { name, kind, alsoCalled = [], formula, charges } = additive;
  const span = spanOf(additive);
  const mass = (at: number) => molarMass(readFormula(formula(at)));
  const ofFormula = (compute: (at: number) => number, unit: string, source: string) =>
    computed(compute, span, unit, source);
  const nitrogen = (at: number) =>
    ((readFormula(formula(at)).get("N") ?? 0) * (ELEMENTS.get("N")?.mass ?? NaN)) / mass(at);
  const shareName = kind === "polyacrylamide" ? CHARGED_MONOMER : SUBSTITUTION;

  const properties: [string, Entry | undefined][] = [
    ["kind", described(kind)],
    ["chemistry", described(additive.chemistry, additive.chemistrySource)],
    ["charge", described(additive.charge)],
    ["formula", { ...described(formula(span[0]), "Idealised repeat unit."), evidence: "computed" }],
    [shareName, additive.share],
    [
      "charge density",
      ofFormula((at) => (MEQ_PER_MOL * charges(at)) / mass(at), "meq/g", STOICHIOMETRY),
    ],
    [
      "nitrogen",
      additive.protein ?? ofFormula(nitrogen, "fraction", `${STOICHIOMETRY} Protein not counted.`),
    ],
    ["typical dose", typical(additive.dose, "kg/t")],
    [
      "retention",
      typical(additive.retention, "fraction", "First pass, on a machine that runs well."),
    ],
    ["COD factor", typical(additive.cod, "g/g")],
    ["BOD factor", typical(additive.bod, "g/g", "Five days.")],
    [
      "theoretical oxygen demand",
      ofFormula((at) => theoreticalOxygenDemand(formula(at), false), "g/g", THEORETICAL),
    ],
    [
      "oxygen demand with nitrification",
      ofFormula((at) => theoreticalOxygenDemand(formula(at), true), "g/g", THEORETICAL),
    ],
    ["solids", typical(additive.solids, "fraction", additive.solidsRemark ?? "As received.")],
    ["solution strength", typical(additive.strength, "fraction", "As dosed.")],
  ];
  return {
    name,
    kind,
    alsoCalled,
    properties: new Map(properties.filter((one): one is [string, Entry] => one[1] !== undefined)),
  };
}

function spanOf({ share }: Additive): Span {
  return share === undefined
    ? NO_SHARE
    : [share.value, share.low ?? share.value, share.high ?? share.value];
}
