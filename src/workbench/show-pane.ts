/** The pane with all that it needs, loaded when the first workbook is computed and somebody looks at it. */
import { type WorkbenchChoices, workbenchHost } from "../host/workbench";
import { mountPane } from "../pane";

export const showPane = (place: HTMLElement, choices: WorkbenchChoices): Promise<unknown> =>
  mountPane(place, workbenchHost(choices));
