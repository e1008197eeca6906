/**
 * A press into the formula bar opens the cell's editor, too, which then asks for the keys with the next drawings of the
 * page: where the press is short, as a tap is, it took them from the bar, and what was typed was lost.
 */
import {
  DOCS_FORMULA_BAR_EDITOR_UNIT_ID_KEY as BAR,
  DOCS_NORMAL_EDITOR_UNIT_ID_KEY as CELL,
  type Injector,
  IUniverInstanceService,
  UniverInstanceType,
} from "@univerjs/core";
import { DocSelectionRenderService } from "@univerjs/docs-ui";
import { IEditorBridgeService } from "@univerjs/sheets-ui";

export function leaveKeysToBar(injector: Injector): void {
  const prototype = DocSelectionRenderService.prototype as unknown as {
    readonly _context: { readonly unitId: string };
    focus(): void;
  };
  const takeKeys = prototype.focus;
  prototype.focus = function () {
    if (this._context.unitId !== CELL || !isEditedInBar(injector)) takeKeys.call(this);
  };
}

function isEditedInBar(injector: Injector): boolean {
  const text = injector
    .get(IUniverInstanceService)
    .getCurrentUnitOfType(UniverInstanceType.UNIVER_DOC);
  return text?.getUnitId() === BAR && injector.get(IEditorBridgeService).isVisible().visible;
}
