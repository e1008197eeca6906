/**
 * What is drawn on the grid's canvas lies in layers. A shape that changes sends its layer a message, by a channel that
 * is made for it, and then the layer is drawn anew. With many references in a formula these are thousands for each
 * key, and as they come after the next drawing, all is drawn twice. One message at a time is enough, and none once
 * the layer is drawn.
 */
import { Layer } from "@univerjs/engine-render";

/** The parts of a layer that matter here; its types call some of them private. */
interface Parts {
  /** Takes back the message that is on its way. */
  _debounceDirtyFunc?: (() => void) | null;
  makeDirty(): void;
  makeDirtyWithDebounce(state?: boolean): void;
  render(...place: unknown[]): unknown;
}

export function drawOnce(): void {
  const prototype = Layer.prototype as unknown as Parts;
  const { makeDirtyWithDebounce: sendMessage, render } = prototype;
  prototype.makeDirtyWithDebounce = function (state) {
    if (!this._debounceDirtyFunc) sendMessage.call(this, state);
  };
  prototype.render = function (...place) {
    if (this._debounceDirtyFunc) {
      this._debounceDirtyFunc();
      this._debounceDirtyFunc = null;
      this.makeDirty();
    }
    return render.apply(this, place);
  };
}
