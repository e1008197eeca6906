import { makeStyles, tokens } from "@fluentui/react-components";
import { useMemo } from "react";
import { layOut } from "../../workbook/layout/lay-out";
import type { PlannedSheet } from "../../workbook/layout/planned";
import type { Plan } from "../../workbook/plan";
import { type Box, boxesOf } from "./boxes";
import { ChartSketch } from "./chart-sketch";

const useStyles = makeStyles({
  sheet: {
    display: "block",
    width: "100%",
    maxWidth: "440px",
    border: `1px solid ${tokens.colorNeutralStroke2}`,
    // A sheet is white in every theme, as it will be in the workbook.
    backgroundColor: "#ffffff",
    forcedColorAdjust: "none",
    fontFamily: tokens.fontFamilyBase,
  },
});

/** The sheet that shows best what a template is: the first with a chart, else the first with inputs. */
function faceOf(plan: Plan): PlannedSheet | undefined {
  const holds = (kind: string) =>
    plan.sheets.findIndex(({ parts }) => parts.some((part) => part.kind === kind));
  const place = holds("chart") >= 0 ? holds("chart") : holds("input");
  return layOut(plan).sheets[Math.max(0, place)];
}

/** A small picture of the main sheet of a template; what a formula will fill is shown as a bar. */
export function Miniature({ plan }: { plan: Plan }) {
  const styles = useStyles();
  const drawn = useMemo(() => {
    const face = faceOf(plan);
    return face === undefined ? undefined : { name: face.name, ...boxesOf(plan, face) };
  }, [plan]);
  if (drawn === undefined) return null;
  return (
    <svg
      className={styles.sheet}
      viewBox={`0 0 ${drawn.width} ${drawn.height}`}
      role="img"
      aria-label={`Picture of the sheet ${drawn.name}`}
    >
      <title>{`The sheet ${drawn.name}`}</title>
      {drawn.boxes.map((box) => (
        <BoxView key={box.key} box={box} />
      ))}
    </svg>
  );
}

function BoxView({ box }: { box: Box }) {
  const { x, y, width, height, fill, ink, text, size, bold } = box;
  return (
    <svg x={x} y={y} width={width} height={height} aria-hidden="true">
      {fill !== undefined && <rect width={width} height={height} fill={fill} />}
      {box.kind === "formula" && (
        <rect x={4} y={height / 2 - 3} width={Math.min(width - 8, 44)} height={6} fill="#b9c2c9" />
      )}
      {box.chart !== undefined && <ChartSketch kind={box.chart} width={width} height={height} />}
      {text !== "" && (
        <text
          x={4}
          y={box.kind === "chart" ? 22 : height - 5}
          fontSize={size}
          fontWeight={bold ? 600 : 400}
          fill={ink}
        >
          {text}
        </text>
      )}
    </svg>
  );
}
