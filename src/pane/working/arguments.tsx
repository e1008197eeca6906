import { makeStyles, mergeClasses, tokens } from "@fluentui/react-components";
import { asCells, errorCode, isBlank, isOmitted, plainValue } from "../../cells/cell";
import type { Call } from "../../cells/observer";
import type { FunctionReference } from "../../help/reference";
import { shown } from "../parts/amount";
import { useText } from "../theme/text-styles";
import { cellsTaken } from "./failure";
import { cameFrom, rowFrom } from "./given";

const useStyles = makeStyles({
  argument: {
    padding: `${tokens.spacingVerticalXS} 0`,
    borderTop: `1px solid ${tokens.colorNeutralStroke2}`,
  },
  line: {
    display: "flex",
    flexWrap: "wrap",
    justifyContent: "space-between",
    columnGap: tokens.spacingHorizontalM,
  },
  value: { marginInlineStart: "auto", textAlign: "end", overflowWrap: "anywhere" },
  under: {
    fontSize: tokens.fontSizeBase200,
    lineHeight: tokens.lineHeightBase200,
    overflowWrap: "anywhere",
  },
  failed: { fontWeight: tokens.fontWeightSemibold },
});

interface ArgumentsProps {
  readonly call: Call;
  readonly reference: FunctionReference;
  /** Each argument as the formula writes it; undefined where the formula is not at hand. */
  readonly given: readonly string[] | undefined;
  /** What the model took; undefined for a cell that failed. */
  readonly values: readonly unknown[] | undefined;
  readonly row: number;
  readonly column: number;
  /** The places of the arguments in which an error stands. */
  readonly failed: readonly number[];
}

/** Each argument with its value, its unit and where it came from. */
export function Arguments(props: ArgumentsProps) {
  const { call, reference, given, values, row, column, failed } = props;
  const styles = useStyles();
  const text = useText();
  return (
    <ul className={text.list}>
      {reference.arguments.map((argument, i) => {
        const isLeftOut = isOmitted(asCells(call.arguments[i]));
        const value =
          values === undefined || isColumnInOtherForm(call, i, values[i])
            ? cellsTaken(call, i, row, column)
            : values[i];
        return (
          <li key={argument.name} className={styles.argument}>
            <div className={styles.line}>
              <span>{argument.name}</span>
              <span className={mergeClasses(styles.value, text.numbers)}>
                {isLeftOut && isNothing(value) ? "none" : inWords(value)}{" "}
                {value !== undefined &&
                  argument.choices === undefined &&
                  argument.unit !== "text" && <span className={text.faint}>{argument.unit}</span>}
              </span>
            </div>
            <div className={mergeClasses(styles.under, text.faint)}>
              {isLeftOut ? "left out" : origin(given?.[i], call.by, row, column)}
              {failed.includes(i) && <span className={styles.failed}> — an error stands here</span>}
            </div>
          </li>
        );
      })}
    </ul>
  );
}

function origin(given: string | undefined, by: Call["by"], row: number, column: number): string {
  if (given === undefined || given === "") return "";
  if (/^[\d.]+%?$|^"[^"]*"$/.test(given)) return "typed in the formula";
  if (by === "cell") return `from ${cameFrom(given, row, column)}`;
  return `from ${by === "row" ? rowFrom(given, row) : given}`;
}

/** As many numbers of a long list as a line holds. */
const SHOWN = 8;

/** What the model took, or, of a cell that failed, what stands in the sheet. */
function inWords(value: unknown): string {
  const plain = plainValue(value);
  if (isBlank(plain)) return "blank";
  if (typeof plain === "number" || typeof plain === "string" || typeof plain === "boolean") {
    return shown(plain);
  }
  if (!isList(plain)) return errorCode(plain) ?? "a table";
  const items = Array.from(plain).map(inWords);
  if (items.length > 1 && items.every((item) => item === items[0])) {
    return `${items[0]}, ${items.length} times`;
  }
  return items.length <= SHOWN
    ? items.join(", ")
    : `${items.slice(0, SHOWN).join(", ")} … (${items.length} in all)`;
}

const isNothing = (value: unknown): boolean =>
  isBlank(value) || (isList(value) && Array.from(value).every(isNothing));

/** Whether the model took a row or a column of cells as something that is no list. */
function isColumnInOtherForm(call: Call, place: number, value: unknown): boolean {
  const cells = asCells(call.arguments[place]);
  const isLine = cells !== null && (cells.length === 1 || cells[0]?.length === 1);
  return isLine && typeof value === "object" && value !== null && !isList(value);
}

const isList = (value: unknown): value is ArrayLike<unknown> =>
  typeof value === "object" && value !== null && "length" in value;
