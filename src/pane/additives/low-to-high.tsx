import { mergeClasses } from "@fluentui/react-components";
import type { Entry } from "../../library/entry";
import { known } from "../parts/amount";
import { useText } from "../theme/text-styles";

/** From where to where a value is met with; nothing where one number is all that is known. */
export function LowToHigh({ entry }: { entry: Pick<Entry, "low" | "high" | "unit"> }) {
  const text = useText();
  const { low, high, unit } = entry;
  if (low === undefined || high === undefined || known(low) === known(high)) return null;
  return (
    <span className={mergeClasses(text.number, text.faint)}>
      {known(low)} to {known(high)} {unit}
    </span>
  );
}
