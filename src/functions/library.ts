import { optionalText, text } from "../cells/choice";
import { optionalTable } from "../cells/table";
import { whole } from "../cells/whole";
import {
  additiveNames,
  additiveProperty,
  anyProperty,
  componentNames,
  componentProperty,
} from "../library/catalogue";
import { cautionsFor } from "../library/safety";
import { VERSION } from "../library/version";

const ownTable = optionalTable("ownTable");
const additiveName = text("name", "the name of an additive, e.g. Guar gum");
const componentName = text("name", "the name of a component, e.g. Kaolin");
const property = text("property", "the name of a property, e.g. retention");

const asColumn = (lines: readonly string[]) => lines.map((line) => [line]);

const additives = whole(
  "LIBRARY.ADDITIVES",
  [optionalText("kind", "a kind, e.g. cationic starch"), ownTable],
  (kind, own) => asColumn(additiveNames(kind, own)),
);

/**
 * Names of the additives for dry strength in the library, those of your own table first. No brands, no
 * suppliers, no prices: those are the mill's own.
 * @customfunction LIBRARY.ADDITIVES
 * @param [kind] Kind to list [text]: native starch, cationic starch, anionic starch, amphoteric starch, gum, carboxymethyl cellulose, polyacrylamide, or a part of it (starch); all if left out.
 * @param [ownTable] Own additives [table]: names in the first column, properties in the first row.
 * @returns Names, in a column [text].
 * @equation \text{names} = \text{own table} \cup \text{library}
 * @range Additives for dry strength in the wet end.
 * @source The library; what each number rests on is told by LIBRARY.SOURCE.
 * @words list, starch, gum, CMC, PAM, guar, products
 * @example =WETEND.LIBRARY.ADDITIVES("native starch") → {"Native maize starch";"Native potato starch";"Native wheat starch";"Native tapioca starch"}
 * @requiresAddress
 */
export function libraryAdditives(
  kind: string,
  ownTable: any[][],
  invocation: CustomFunctions.Invocation,
): any[][] {
  return additives(kind, ownTable, invocation);
}

const additive = whole(
  "LIBRARY.ADDITIVE",
  [additiveName, property, ownTable],
  (name, wanted, own) => [[additiveProperty(name, wanted, own).value]],
);

/**
 * A property of an additive. Your own table goes before the library, cell by cell. Typical values are a start
 * for a first estimate, not for a permit or a purchase: LIBRARY.SOURCE says how sure each is.
 * @customfunction LIBRARY.ADDITIVE
 * @param name Name of the additive in any case, or another word of the trade for it (CMC, corn starch) [text].
 * @param property Property [text]: kind, chemistry, charge, formula, degree of substitution, charged monomer, charge density, nitrogen, typical dose, retention, COD factor, BOD factor, theoretical oxygen demand, oxygen demand with nitrification, solids, solution strength, or one of the own table.
 * @param [ownTable] Own additives [table]: names in the first column, properties in the first row, a unit in brackets behind the property; a blank cell leaves the library's value.
 * @returns The value [unit of the property, told by LIBRARY.SOURCE].
 * @equation \text{value} = \text{own table} \; \text{or else} \; \text{library}
 * @range What the library or your own table holds; anything else is #N/A with the nearest names.
 * @source The library; what each number rests on is told by LIBRARY.SOURCE.
 * @words look up, COD factor, dose, retention, charge density, own additive
 * @example =WETEND.LIBRARY.ADDITIVE("Cationic starch, DS 0.035", "charge density") → 0.209019877
 * @example =WETEND.LIBRARY.ADDITIVE("My starch", "COD factor", {"name","COD factor [g/g]";"My starch",1.07}) → 1.07
 * @requiresAddress
 */
export function libraryAdditive(
  name: string,
  property: string,
  ownTable: any[][],
  invocation: CustomFunctions.Invocation,
): any[][] {
  return additive(name, property, ownTable, invocation);
}

const components = whole("LIBRARY.COMPONENTS", [ownTable], (own) => asColumn(componentNames(own)));

/**
 * Names of the components of a furnish in the library (fibre, fines, fillers), those of your own table first.
 * @customfunction LIBRARY.COMPONENTS
 * @param [ownTable] Own components [table]: names in the first column, properties in the first row.
 * @returns Names, in a column [text].
 * @equation \text{names} = \text{own table} \cup \text{library}
 * @range Solids of a furnish that hold additive.
 * @source The library; what each number rests on is told by LIBRARY.SOURCE.
 * @words list, fibre, fiber, fines, filler, clay, carbonate
 * @example =WETEND.LIBRARY.COMPONENTS() → {"Bleached kraft fibre, refined";"Mechanical-pulp fibre";"Recycled fibre";"Primary fines";"Secondary fines";"Mechanical-pulp fines, flakes";"Mechanical-pulp fines, fibrils";"Kaolin";"Ground calcium carbonate";"Precipitated calcium carbonate";"Talc";"Titanium dioxide"}
 * @requiresAddress
 */
export function libraryComponents(
  ownTable: any[][],
  invocation: CustomFunctions.Invocation,
): any[][] {
  return components(ownTable, invocation);
}

const component = whole(
  "LIBRARY.COMPONENT",
  [componentName, property, ownTable],
  (name, wanted, own) => [[componentProperty(name, wanted, own).value]],
);

/**
 * A property of a component of the furnish. Site capacity and half load are for cationic starch and were not
 * found published: calibrate them on a beaker test and keep them in a table of your own.
 * @customfunction LIBRARY.COMPONENT
 * @param name Name of the component in any case, or another word of the trade for it (clay, PCC) [text].
 * @param property Property [text]: kind, specific surface, site capacity, half load, charge, first-pass retention, ash factor (at 900 °C), surface against fibre (fines), or one of the own table.
 * @param [ownTable] Own components [table]: names in the first column, properties in the first row, a unit in brackets behind the property; a blank cell leaves the library's value.
 * @returns The value [unit of the property, told by LIBRARY.SOURCE].
 * @equation \text{value} = \text{own table} \; \text{or else} \; \text{library}
 * @range What the library or your own table holds; anything else is #N/A with the nearest names.
 * @source The library; what each number rests on is told by LIBRARY.SOURCE.
 * @words look up, specific surface, capacity, half load, ash factor, fines, filler
 * @example =WETEND.LIBRARY.COMPONENT("Ground calcium carbonate", "ash factor") → 0.560288152
 * @requiresAddress
 */
export function libraryComponent(
  name: string,
  property: string,
  ownTable: any[][],
  invocation: CustomFunctions.Invocation,
): any[][] {
  return component(name, property, ownTable, invocation);
}

const source = whole(
  "LIBRARY.SOURCE",
  [text("name", "the name of an additive or a component, e.g. Kaolin"), property, ownTable],
  (name, wanted, own) => {
    const { value, unit, low, high, evidence, source } = anyProperty(name, wanted, own);
    return [
      ["value", value],
      ["unit", unit],
      ["low", low ?? ""],
      ["high", high ?? ""],
      ["evidence", evidence],
      ["source", source],
    ];
  },
);

/**
 * Where a number of the library comes from, its range, and how sure it is. "Typical, from memory" was not
 * traced to a publication: a measurement of your own replaces it in one cell of a table of your own.
 * @customfunction LIBRARY.SOURCE
 * @param name Name of the additive or component in any case, or another word of the trade for it [text].
 * @param property Property, as in LIBRARY.ADDITIVE and LIBRARY.COMPONENT [text].
 * @param [ownTable] Own additives or components [table]: names in the first column, properties in the first row.
 * @returns Table: value, unit, low, high, evidence, source [unit as told in the table].
 * @equation \text{evidence} \in \{\text{published}, \text{computed}, \text{typical, from memory}, \text{own table}\}
 * @range What the library or your own table holds.
 * @source The library.
 * @words citation, evidence, uncertainty, range, reference
 * @example =WETEND.LIBRARY.SOURCE("Guar gum", "theoretical oxygen demand") → {"value",1.184080523;"unit","g/g";"low",1.184080523;"high",1.184080523;"evidence","computed";"source","Stoichiometry of the formula, atomic masses of IUPAC/CIAAW. Theoretical, above what is measured."}
 * @requiresAddress
 */
export function librarySource(
  name: string,
  property: string,
  ownTable: any[][],
  invocation: CustomFunctions.Invocation,
): any[][] {
  return source(name, property, ownTable, invocation);
}

const safety = whole(
  "LIBRARY.SAFETY",
  [text("name", "a task, e.g. Cooking, or the name or kind of an additive or component")],
  (name) => asColumn(cautionsFor(name)),
);

/**
 * The usual cautions for a task, an additive, a component or a kind of them. They do not replace the supplier's safety data
 * sheet, the site's rules, local law, training or a permit.
 * @customfunction LIBRARY.SAFETY
 * @param name Task or name [text]: Handling powder, Cooking, Storage, Spills, Confined spaces, Laboratory, Effluent, or an additive or component of the library, or a kind of them (cationic starch, filler).
 * @returns Cautions, in a column [text].
 * @equation \text{cautions} = \text{own} + \text{kind} + \text{what comes first}
 * @range The usual cautions of the trade, not complete for any site.
 * @source Named in each caution; else common practice, no source.
 * @words hazard, dust explosion, burns, hydrogen sulphide, monomer, data sheet, SDS
 * @example =WETEND.LIBRARY.SAFETY("Secondary fines") → {"Stock that stands gives off hydrogen sulphide: see Storage and Confined spaces.";"The supplier's safety data sheet, the site's rules and local law come first, and licensed people do licensed work."}
 * @requiresAddress
 */
export function librarySafety(name: string, invocation: CustomFunctions.Invocation): any[][] {
  return safety(name, invocation);
}

const version = whole("LIBRARY.VERSION", [], () => [[VERSION]]);

/**
 * What computes this workbook, so that a saved copy says so.
 * @customfunction LIBRARY.VERSION
 * @returns Name and version [text].
 * @equation \text{version} = \text{name and number of this release}
 * @range Every workbook.
 * @source The release itself.
 * @words about, release, audit
 * @example =WETEND.LIBRARY.VERSION() → "Dosewright 0.1.0"
 * @requiresAddress
 */
export function libraryVersion(invocation: CustomFunctions.Invocation): any[][] {
  return version(invocation);
}
