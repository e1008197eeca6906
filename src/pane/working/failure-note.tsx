import { makeStyles, mergeClasses, tokens } from "@fluentui/react-components";
import { useText } from "../theme/text-styles";
import type { Failure } from "./failure";

const useStyles = makeStyles({
  note: {
    margin: `${tokens.spacingVerticalM} 0`,
    padding: "8px 12px",
    border: `1px solid ${tokens.colorNeutralStroke1}`,
    borderInlineStartWidth: "4px",
  },
  code: { fontWeight: tokens.fontWeightSemibold },
});

/** What is wrong with a cell, and how to mend it. */
export function FailureNote({ failure: { code, wrong, mend } }: { failure: Failure }) {
  const styles = useStyles();
  const text = useText();
  return (
    <section className={styles.note} aria-label="What is wrong">
      <p className={mergeClasses(text.paragraph, styles.code)}>{code}</p>
      <p className={text.paragraph}>{wrong}</p>
      {mend !== "" && <p className={mergeClasses(text.paragraph, styles.code)}>{mend}</p>}
    </section>
  );
}
