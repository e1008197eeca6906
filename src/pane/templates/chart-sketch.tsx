import { palette, seriesColours } from "../../workbook/layout/looks";
import type { ChartKind } from "../../workbook/plan";

interface ChartSketchProps {
  readonly kind: ChartKind;
  readonly width: number;
  readonly height: number;
}

/** Heights as shares of the frame: what kind of chart it is, and no more. */
const HEIGHTS = [0.35, 0.6, 0.5, 0.8, 0.65, 0.9];
const MARGIN = 40;

/** What a chart will look like before anything is computed. */
export function ChartSketch({ kind, width, height }: ChartSketchProps) {
  const [across, up] = [width - 2 * MARGIN, height - 2 * MARGIN];
  const step = across / HEIGHTS.length;
  const places = HEIGHTS.map((share, i) => ({
    x: MARGIN + (i + 0.5) * step,
    y: MARGIN + (1 - share) * up,
    share,
  }));
  const lying = kind === "bars" || kind === "stacked bars";
  return (
    <>
      <rect width={width} height={height} fill="#ffffff" stroke={palette.hairline} />
      <polyline
        points={`${MARGIN},${MARGIN} ${MARGIN},${height - MARGIN} ${width - MARGIN},${height - MARGIN}`}
        fill="none"
        stroke={palette.grey}
      />
      {kind.includes("columns") &&
        places.map(({ x, y, share }) => (
          <g key={x}>
            <rect
              x={x - step / 3}
              y={y}
              width={(2 * step) / 3}
              height={share * up}
              fill={seriesColours[0]}
            />
            {kind !== "columns" && (
              <rect
                x={x - step / 3}
                y={y}
                width={(2 * step) / 3}
                height={(share * up) / 2.5}
                fill={seriesColours[1]}
              />
            )}
          </g>
        ))}
      {lying &&
        places
          .slice(0, 4)
          .map(({ x, share }, i) => (
            <rect
              key={x}
              x={MARGIN}
              y={MARGIN + (i * up) / 4 + 4}
              width={share * across}
              height={up / 4 - 8}
              fill={seriesColours[0]}
            />
          ))}
      {!lying && !kind.includes("columns") && kind !== "points" && (
        <polyline
          points={places.map(({ x, y }) => `${x},${y}`).join(" ")}
          fill="none"
          stroke={seriesColours[0]}
          strokeWidth={4}
        />
      )}
      {kind.includes("points") &&
        places.map(({ x, y }) => <circle key={x} cx={x} cy={y} r={6} fill={seriesColours[0]} />)}
    </>
  );
}
