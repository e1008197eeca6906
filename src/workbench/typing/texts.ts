/**
 * A formula that is being written is a text in its cell and one in the formula bar, and the grid lays each of them
 * out when either changes. Each has a controller that is asked for that: here it takes care of its own.
 */
import { DocRenderController } from "@univerjs/docs-ui";

/** The parts of a controller that matter here; its types call some of them private. */
interface Parts {
  readonly _context: { readonly unitId: string };
  reRender(unitId: string): void;
}

export function layOutOwnText(): void {
  const prototype = DocRenderController.prototype as unknown as Parts;
  const layOut = prototype.reRender;
  prototype.reRender = function (unitId) {
    if (unitId === this._context.unitId) layOut.call(this, unitId);
  };
}
