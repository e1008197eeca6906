import { makeStyles, tokens } from "@fluentui/react-components";

/** The few ways in which text stands in the pane. */
export const useText = makeStyles({
  heading: {
    margin: 0,
    fontSize: tokens.fontSizeBase400,
    fontWeight: tokens.fontWeightSemibold,
    lineHeight: tokens.lineHeightBase400,
    overflowWrap: "anywhere",
  },
  subheading: {
    margin: `${tokens.spacingVerticalL} 0 ${tokens.spacingVerticalXS}`,
    fontSize: tokens.fontSizeBase300,
    fontWeight: tokens.fontWeightSemibold,
    lineHeight: tokens.lineHeightBase300,
  },
  faint: { color: tokens.colorNeutralForeground3 },
  paragraph: { margin: `${tokens.spacingVerticalXS} 0`, lineHeight: tokens.lineHeightBase300 },
  /** Numbers that may run over several lines. */
  numbers: { fontVariantNumeric: "tabular-nums" },
  number: { fontVariantNumeric: "tabular-nums", whiteSpace: "nowrap" },
  code: {
    fontFamily: tokens.fontFamilyMonospace,
    fontSize: tokens.fontSizeBase200,
    overflowWrap: "anywhere",
  },
  list: { margin: 0, padding: 0, listStyleType: "none" },
  hidden: {
    position: "absolute",
    width: "1px",
    height: "1px",
    overflow: "hidden",
    clipPath: "inset(50%)",
    whiteSpace: "nowrap",
  },
});
