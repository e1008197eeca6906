import { mergeClasses } from "@fluentui/react-components";
import { figure } from "../../model/figure";
import { grouped } from "../../working/picture";
import { useText } from "../theme/text-styles";

/** A value as it is read: a number to six figures, money to the cent, TRUE and FALSE as a sheet writes them. */
export function shown(value: number | string | boolean | null, unit = ""): string {
  if (typeof value === "number") {
    if (unit === "money" && Number.isFinite(value)) return grouped(value, 2);
    return Number.isFinite(value) ? figure(value).replaceAll("-", "−") : "no number";
  }
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  return value ?? "";
}

/** A number of the library as it is read: four figures, as much as any of them is known to. */
export const known = (value: number | string | boolean) =>
  shown(typeof value === "number" ? Number(value.toPrecision(4)) : value);

/** Units that say nothing beside a number. */
const UNSPOKEN = new Set(["", "text"]);

/** A value, and its unit in grey. */
export function Amount(props: {
  value: number | string | boolean;
  unit: string;
  isFromLibrary?: boolean;
}) {
  const { value, unit, isFromLibrary = false } = props;
  const text = useText();
  const isNumber = typeof value === "number";
  return (
    <span className={mergeClasses(isNumber && text.number)}>
      {isFromLibrary ? known(value) : shown(value, unit)}
      {!UNSPOKEN.has(unit) && <span className={text.faint}> {unit}</span>}
    </span>
  );
}
