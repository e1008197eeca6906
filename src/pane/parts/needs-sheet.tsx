import { mergeClasses } from "@fluentui/react-components";
import { useText } from "../theme/text-styles";

/** What stands where a sheet would be needed and there is none. */
export function NeedsSheet({ to }: { to: string }) {
  const text = useText();
  return (
    <p className={mergeClasses(text.paragraph, text.faint)}>
      There is no sheet here. Open the pane in Excel or in the workbench {to}.
    </p>
  );
}
