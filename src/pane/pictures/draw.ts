import type { Picture } from "../../working/picture";
import { drawBars } from "./bars";
import { drawCurves } from "./curves";
import { drawDistribution } from "./distribution";
import { drawFlow } from "./flow";
import { drawRuns } from "./runs";
import { drawStack } from "./stack";

/** A picture as a drawing of that width. */
export function draw(picture: Picture, width: number): Element {
  switch (picture.kind) {
    case "stack":
      return drawStack(picture, width);
    case "curves":
      return drawCurves(picture, width);
    case "bars":
      return drawBars(picture, width);
    case "flow":
      return drawFlow(picture, width);
    case "distribution":
      return drawDistribution(picture, width);
    case "runs":
      return drawRuns(picture, width);
  }
}
