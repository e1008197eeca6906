import * as formula from "@univerjs/engine-formula";
import { circlesOf } from "../../engine/circles";
import { addressOf, sheetPrefix } from "../../workbook/address";
import { type Grid, workbookOf } from "../grid/grid";

const MOST_NAMED = 5;

/** What to say where formulas read their own answers: the grid shows numbers there that mean nothing. */
export async function circleNotice({ injector }: Grid): Promise<string | undefined> {
  const workbook = workbookOf({ injector });
  if (!workbook) return undefined;
  const { inside } = await circlesOf(formula, injector, workbook);
  if (inside.length === 0) return undefined;
  const named = inside.slice(0, MOST_NAMED).map(({ sheetId, row, column }) => {
    const sheet = workbook.getSheetBySheetId(sheetId)?.getName() ?? "";
    return `${sheetPrefix(sheet)}${addressOf(row, column)}`;
  });
  const more = inside.length > MOST_NAMED ? ` and ${inside.length - MOST_NAMED} more` : "";
  return `These formulas read their own answers, so that no number below them means anything: ${named.join(", ")}${more}. Break the circle.`;
}
