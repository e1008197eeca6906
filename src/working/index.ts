import { charge } from "./charge";
import { cost } from "./cost";
import { dose } from "./dose";
import { effluent } from "./effluent";
import { library } from "./library";
import { partition } from "./partition";
import { refining } from "./refining";
import { retention } from "./retention";
import type { Working } from "./step";
import { strength } from "./strength";
import { trial } from "./trial";
import { uncertainty } from "./uncertainty";

/** How each function's answer comes about, told from the values that the model took. */
const TELLERS: Readonly<Record<string, (...values: never[]) => Working>> = {
  ...partition,
  ...retention,
  ...dose,
  ...charge,
  ...strength,
  ...refining,
  ...cost,
  ...trial,
  ...uncertainty,
  ...library,
  ...effluent,
};

/** The functions whose working is told. */
export const toldFunctions = (): readonly string[] => Object.keys(TELLERS);

/** The working of one answer; undefined where none is told of that function. */
export function tellWorking(id: string, values: readonly unknown[]): Working | undefined {
  return TELLERS[id]?.(...(values as never[]));
}
