import {
  type BrandVariants,
  createDarkTheme,
  createLightTheme,
  type Theme,
} from "@fluentui/react-components";
import { palette } from "../../workbook/layout/looks";

/** One accent, from dark to light; its middle is the accent of the workbooks. */
const ACCENT: BrandVariants = {
  10: "#011414",
  20: "#032323",
  30: "#053333",
  40: "#064343",
  50: "#085252",
  60: "#096060",
  70: palette.accent,
  80: palette.accent,
  90: "#2a8583",
  100: "#469a97",
  110: "#60b0aa",
  120: "#79cdbf",
  130: "#95d9ce",
  140: "#b1e4dc",
  150: "#cdefea",
  160: "#e9f8f6",
};

const SHARED: Partial<Theme> = {
  fontFamilyBase: '"Segoe UI", system-ui, sans-serif',
  fontFamilyMonospace: '"Cascadia Mono", Consolas, ui-monospace, monospace',
  borderRadiusMedium: "2px",
};

/** Ink on paper. */
export const lightTheme: Theme = {
  ...createLightTheme(ACCENT),
  ...SHARED,
  ...neutrals({
    paper: "#fbfaf6",
    raised: "#f3f1ea",
    pressed: "#e8e5db",
    ink: palette.ink,
    faint: "#5a666f",
    rule: "#d6d2c6",
    edge: "#77828a",
  }),
};

/** The same at night. */
export const darkTheme: Theme = {
  ...createDarkTheme(ACCENT),
  ...SHARED,
  ...neutrals({
    paper: "#15191c",
    raised: "#1e2428",
    pressed: "#293136",
    ink: "#e4e1d8",
    faint: "#a3adb2",
    rule: "#39424a",
    edge: "#87939a",
  }),
  colorBrandForeground1: ACCENT[120],
  colorBrandForeground2: ACCENT[120],
  colorBrandForegroundLink: ACCENT[120],
  colorBrandForegroundLinkHover: ACCENT[140],
  colorCompoundBrandForeground1: ACCENT[120],
  colorCompoundBrandStroke: ACCENT[120],
};

interface Neutrals {
  readonly paper: string;
  readonly raised: string;
  readonly pressed: string;
  readonly ink: string;
  readonly faint: string;
  /** Between the parts of a page. */
  readonly rule: string;
  /** Around what can be worked. */
  readonly edge: string;
}

function neutrals({ paper, raised, pressed, ink, faint, rule, edge }: Neutrals): Partial<Theme> {
  return {
    colorNeutralBackground1: paper,
    colorNeutralBackground1Hover: raised,
    colorNeutralBackground1Pressed: pressed,
    colorNeutralBackground1Selected: raised,
    colorNeutralBackground2: raised,
    colorSubtleBackgroundHover: raised,
    colorSubtleBackgroundPressed: pressed,
    colorNeutralForeground1: ink,
    colorNeutralForeground2: ink,
    colorNeutralForeground3: faint,
    colorNeutralForeground4: faint,
    colorNeutralStroke1: edge,
    colorNeutralStroke2: rule,
    colorNeutralStroke3: rule,
    colorNeutralStrokeAccessible: edge,
  };
}
