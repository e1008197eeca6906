/** Rules that compare all their cells with one another (scales of colours, bars, icons, the highest ten…), as the grid's package takes them. */
import type { IStyleData } from "@univerjs/core";
import type {
  IConditionalFormattingRuleConfig,
  IDataBar,
} from "@univerjs/sheets-conditional-formatting";
import { fixedAddress } from "../../workbook/address";
import type { Area } from "../../workbook/book";
import { colourOf } from "../../workbook/read/colours";
import type { Ranking } from "../../workbook/sheet-rules";
import { isOn, readShortXml, type XmlElement } from "../../workbook/xml";

// The package's own word, as in its CFRuleType: what puts a workbook together loads no package that draws.
const BARS = "dataBar" as IDataBar["type"];

type Attributes = Readonly<Record<string, string>>;

/** Undefined for what the grid cannot draw as its file says it. */
export function gridRanking(
  { attributes, inner, extension = "" }: Ranking,
  style: IStyleData,
  areas: readonly Area[],
): IConditionalFormattingRuleConfig | undefined {
  const elements = elementsOf(inner);
  if (named(elements, "cfvo").some(({ val = "0" }) => !Number.isFinite(Number(val))))
    return undefined;
  const rule =
    attributes.type === "colorScale"
      ? colourScale(elements)
      : attributes.type === "dataBar"
        ? bars(elements, elementsOf(extension), areas)
        : attributes.type === "iconSet"
          ? icons(elements)
          : compared(attributes, style);
  return rule as IConditionalFormattingRuleConfig | undefined;
}

function elementsOf(inner: string): readonly XmlElement[] {
  const elements: XmlElement[] = [];
  readShortXml("a rule", `<rule>${inner}</rule>`, { open: (element) => elements.push(element) });
  return elements;
}

const named = (elements: readonly XmlElement[], name: string): Attributes[] =>
  elements.filter((element) => element.name === name).map(({ attributes }) => attributes);

/** A bound of the scale: the least, the greatest, a number, a percentage of the way or of the cells. */
function bound({ type = "num", val }: Attributes) {
  if (type === "min" || type === "max") return { type };
  return { type: type === "formula" ? "num" : type, value: Number(val) };
}

function colourScale(elements: readonly XmlElement[]) {
  const colours = named(elements, "color").map((its) => colourOf(its));
  const config = named(elements, "cfvo").map((cfvo, index) => {
    return { index, color: colours[index], value: bound(cfvo) };
  });
  if (config.length < 2 || config.some(({ color }) => color === undefined)) return undefined;
  return { type: "colorScale", config };
}

/** What goes below nothing is red, as in other spreadsheets where no colour is said. */
const BELOW_NOTHING = "#ff0000";

const leastOf = (areas: readonly Area[]) => `=MIN(0,${areas.map(fixedAddress).join(",")})`;

/** The rule for other areas: bars that begin at the least number of their cells take that of the others. */
export function rankingOver(
  rule: IConditionalFormattingRuleConfig,
  areas: readonly Area[],
  others: readonly Area[],
): IConditionalFormattingRuleConfig {
  if (rule.type !== BARS || rule.config.min.value !== leastOf(areas)) return rule;
  const min = { ...rule.config.min, value: leastOf(others) };
  return { ...rule, config: { ...rule.config, min } };
}

/**
 * The bound of an extension that is set by itself: the least number or 0, the greatest number or 0 ([MS-XLSX]
 * 2.7.9, ST_CfvoType). The grid's greatest one is never below 0.
 */
function automaticBound({ type }: Attributes, areas: readonly Area[]) {
  if (type === "autoMin") return { type: "formula", value: leastOf(areas) };
  return type === "autoMax" ? { type: "max" } : undefined;
}

function bars(
  elements: readonly XmlElement[],
  extended: readonly XmlElement[],
  areas: readonly Area[],
) {
  const automatic = named(extended, "cfvo").map((cfvo) => automaticBound(cfvo, areas));
  const bounds = named(elements, "cfvo").map(bound);
  const [min, max] = bounds.map((its, index) => automatic[index] ?? its);
  const positiveColor = named(elements, "color").map((its) => colourOf(its))[0];
  if (!min || !max || positiveColor === undefined) return undefined;
  const isShowValue = named(elements, "dataBar")[0]?.showValue !== "0";
  const config = { min, max, isGradient: false, positiveColor, nativeColor: BELOW_NOTHING };
  return { type: "dataBar", isShowValue, config };
}

/** Those that every file may name (ECMA-376 Part 1, 18.18.42). */
const iconSets =
  /^(?:[345]Arrows(?:Gray)?|3(?:Flags|Signs|Symbols2?|TrafficLights[12])|4(?:Rating|RedToBlack|TrafficLights)|5(?:Rating|Quarters))$/;

/** The grid asks from the highest icon to the lowest, files from the lowest on. */
function icons(elements: readonly XmlElement[]) {
  const [{ iconSet: iconType = "3TrafficLights1", showValue, reverse } = {} as Attributes] = named(
    elements,
    "iconSet",
  );
  const bounds = named(elements, "cfvo").reverse();
  if (!iconSets.test(iconType) || bounds.length !== Number(iconType[0])) return undefined;
  const config = bounds.map((cfvo, at) => ({
    operator: cfvo.gte === "0" ? "greaterThan" : "greaterThanOrEqual",
    value: bound(cfvo),
    iconType,
    iconId: `${isOn(reverse) ? bounds.length - 1 - at : at}`,
  }));
  return { type: "iconSet", isShowValue: showValue !== "0", config };
}

/** Cells that stand out among the others. */
function compared(attributes: Attributes, style: IStyleData) {
  const { type, rank = "10", percent, bottom, aboveAverage, equalAverage, stdDev } = attributes;
  const shared = { type: "highlightCell", style };
  if (type === "duplicateValues" || type === "uniqueValues") return { ...shared, subType: type };
  if (type === "top10") {
    const which = { isPercent: isOn(percent), isBottom: isOn(bottom), value: Number(rank) };
    return { ...shared, subType: "rank", ...which };
  }
  // How many deviations from the mean, the grid does not ask.
  if (type !== "aboveAverage" || stdDev !== undefined) return undefined;
  const side = aboveAverage === "0" ? "lessThan" : "greaterThan";
  const operator = isOn(equalAverage) ? `${side}OrEqual` : side;
  return { ...shared, subType: "average", operator };
}
