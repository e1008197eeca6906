import {
  additiveNames,
  additiveProperty,
  anyProperty,
  componentNames,
  componentProperty,
} from "../library/catalogue";
import type { Entry, Evidence } from "../library/entry";
import type { OwnCells } from "../library/own-table";
import { cautionsFor } from "../library/safety";
import { VERSION } from "../library/version";
import { counted } from "../model/figure";
import { amount, bars, type Picture } from "./picture";
import { listed } from "./sentence";
import { each, found, type Line, numbered, type Value, type Working } from "./step";

type LookUp = (name: string, property: string, own: OwnCells | null) => Entry;

export const library = {
  "LIBRARY.ADDITIVES": (kind: string | undefined, own: OwnCells | null): Working =>
    names(
      kind === undefined ? "Every additive" : `Additives of the kind “${kind}”`,
      additiveNames(kind, own),
    ),

  "LIBRARY.COMPONENTS": (own: OwnCells | null): Working =>
    names("Every component", componentNames(own)),

  "LIBRARY.ADDITIVE": looked(additiveProperty),
  "LIBRARY.COMPONENT": looked(componentProperty),

  "LIBRARY.SOURCE": (name: string, property: string, own: OwnCells | null): Working => {
    const entry = anyProperty(name, property, own);
    const { value, unit, low, high, evidence, source } = entry;
    const shown = typeof value === "number" ? amount(value, unit) : String(value);
    return {
      says: `The ${property} of ${name} is ${shown} (${evidence}).`,
      steps: [
        each(`What is known of ${property} of ${name}`, [
          said("value", value, shownUnit(unit)),
          said("unit", unit),
          said("low", low ?? "", unit),
          said("high", high ?? "", unit),
          said("evidence", evidence),
          said("source", source),
        ]),
      ],
      ...lowToHigh(name, entry),
      remarks: [TRUST[evidence]],
    };
  },

  "LIBRARY.SAFETY": (name: string): Working => {
    const cautions = cautionsFor(name);
    return {
      says: `${counted(cautions.length, "caution")} for ${name}: the usual ones, not all that a site needs.`,
      steps: [
        each(
          `Cautions for ${name}`,
          cautions.map((caution, i) => said(numbered("caution", i), caution)),
        ),
      ],
    };
  },

  "LIBRARY.VERSION": (): Working => ({
    steps: [found("What computes this workbook", VERSION, "")],
  }),
};

/** How far a value can be relied on, by how it is known. */
const TRUST: Readonly<Record<Evidence, string>> = {
  published: "Published: the source says for what.",
  computed: "Computed: as sure as what it is computed from.",
  "typical, from memory":
    "Typical of the trade, from memory: a start for a first estimate, not for a permit or a purchase. Your own measurement in a table of your own goes before it.",
  "own table": "Your own table goes before the library.",
};

function looked(lookUp: LookUp) {
  return (name: string, property: string, own: OwnCells | null): Working => {
    const entry = lookUp(name, property, own);
    const { value, unit, low, high, evidence, source } = entry;
    return {
      steps: [
        each("Where it comes from", [
          ...(low === undefined || high === undefined
            ? []
            : [said("low", low, unit), said("high", high, unit)]),
          said("evidence", evidence),
          said("source", source),
        ]),
        found(`${property} of ${name}`, value, shownUnit(unit)),
      ],
      ...lowToHigh(name, entry),
      remarks: [TRUST[evidence]],
    };
  };
}

/** A text has no unit to show beside it. */
const shownUnit = (unit: string) => (unit === "text" ? "" : unit);

const said = (label: string, value: Value, unit = ""): Line => ({
  label,
  tex: undefined,
  value,
  unit,
});

const names = (what: string, all: readonly string[]): Working => ({
  says: `${counted(all.length, "name")}: ${listed(all, (name) => name)}.`,
  steps: [
    {
      kind: "table",
      what: `${what}, those of your own table first`,
      columns: ["name"],
      rows: all.map((name) => [name]),
    },
  ],
});

/** The value within its range, where it has one. */
function lowToHigh(
  name: string,
  { value, unit, low, high }: Entry,
): { readonly picture?: Picture } {
  if (typeof value !== "number" || low === undefined || high === undefined || low === high) {
    return {};
  }
  return { picture: bars("From low to high", unit, [{ label: name, value, low, high }]) };
}
