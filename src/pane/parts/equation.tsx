import { makeStyles, mergeClasses, tokens } from "@fluentui/react-components";
import { Scroll } from "./scroll";

const useStyles = makeStyles({
  equation: {
    margin: `${tokens.spacingVerticalS} 0`,
    paddingBlock: "2px",
    // So that most are seen whole in the width of the pane.
    fontSize: tokens.fontSizeBase300,
    // Fonts made for text leave no room about the bar of a fraction.
    "& mfrac > :first-child": { paddingBottom: "0.1em" },
    "& mfrac > :last-child": { paddingTop: "0.1em" },
    "& > span": { display: "flex", flexWrap: "wrap", alignItems: "baseline", rowGap: "6px" },
    "& math:not(:last-child)": { marginInlineEnd: "1em" },
    "& .letter": { fontStyle: "italic", textTransform: "none" },
  },
  inline: { margin: 0 },
});

/** An equation. The MathML is our own: made from TeX by the build, or by the working. */
export function Equation(props: { mathml: string; label: string; isInline?: boolean }) {
  const styles = useStyles();
  const { mathml, label, isInline } = props;
  return (
    <Scroll label={label} className={mergeClasses(styles.equation, isInline && styles.inline)}>
      {/* biome-ignore lint/security/noDangerouslySetInnerHtml: our own markup, no one else's text in it */}
      <span dangerouslySetInnerHTML={{ __html: mathml }} />
    </Scroll>
  );
}
