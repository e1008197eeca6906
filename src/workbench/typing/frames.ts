/**
 * The frames around the cells that a formula reads while it is written. At each key the grid lays all of them out,
 * makes all of them anew where there is one more or one fewer, and draws all of them, wherever they are. Here only what
 * is new about them is done: none of it for most keys.
 */
import { type Nullable, RANGE_TYPE } from "@univerjs/core";
import type { IViewportInfo, Scene, UniverRenderingContext } from "@univerjs/engine-render";
import type { ISelectionWithStyle, SheetsSelectionsService } from "@univerjs/sheets";
import { RefSelectionsRenderService } from "@univerjs/sheets-formula-ui";
import { SelectionControl } from "@univerjs/sheets-ui";

export function keepFrames(): void {
  layOutWhatChanged();
  makeWhatIsMissing();
  drawWhatIsInView();
}

function layOutWhatChanged(): void {
  const { prototype } = SelectionControl;
  const layOut = prototype.updateRangeBySelectionWithCoord;
  const laidOut = new WeakMap<SelectionControl, string>();
  prototype.updateRangeBySelectionWithCoord = function (selection, skeleton) {
    const asked = JSON.stringify([
      selection,
      skeleton?.rowHeaderWidth,
      skeleton?.columnHeaderHeight,
      skeleton?.rowHeaderWidthAndMarginLeft,
      skeleton?.columnHeaderHeightAndMarginTop,
    ]);
    const isSame = () => laidOut.get(this) === asked + JSON.stringify(this.getValue());
    if (isSame()) return;
    layOut.call(this, selection, skeleton);
    laidOut.set(this, asked + JSON.stringify(this.getValue()));
  };
}

/** The parts of the service that matter here; its types call some of them private. */
interface Service {
  readonly _refSelectionsService: SheetsSelectionsService;
  disposeWithMe(what: unknown): void;
  getSelectionControls(): readonly SelectionControl[];
  resetSelectionsByModelData(frames: readonly ISelectionWithStyle[]): void;
  clearLastSelection(): void;
  _initSelectionChangeListener(): void;
}

function makeWhatIsMissing(): void {
  const prototype = RefSelectionsRenderService.prototype as unknown as Service;
  if (!prototype._initSelectionChangeListener)
    throw new Error("The grid frames references in another way: see typing/frames.");
  prototype._initSelectionChangeListener = function () {
    const frame = (frames: Nullable<ISelectionWithStyle[]>) => {
      // One that framed a column may come to frame a cell, which says nothing of its kind.
      for (const { model } of this.getSelectionControls()) model.setRangeType(RANGE_TYPE.NORMAL);
      this.resetSelectionsByModelData(frames ?? []);
    };
    this.disposeWithMe(this._refSelectionsService.selectionSet$.subscribe(frame));
  };
  // Behind each operator the grid clears all frames, for the case that another sheet came to the front, and makes them
  // anew. For another sheet they are cleared anyway.
  prototype.clearLastSelection = () => {};
}

/** What of a frame lies around its cells, in pixels of the canvas. */
const EDGE = 10;

function drawWhatIsInView(): void {
  const { prototype } = RefSelectionsRenderService;
  const make = prototype.newSelectionControl;
  prototype.newSelectionControl = function (scene, ...of) {
    const control = withoutLookingUp(scene, () => make.call(this, scene, ...of));
    const shapes = control.selectionShapeGroup;
    const draw = shapes.render.bind(shapes);
    shapes.render = (context: UniverRenderingContext, view: IViewportInfo) => {
      if (isInView(control, view)) draw(context, view);
    };
    return control;
  };
}

/** For each shape of a group that is added, the grid sorts all that it shows, to find one of the same key: there is none. */
function withoutLookingUp<T>(scene: Scene, add: () => T): T {
  Object.assign(scene, { getObject: () => undefined });
  try {
    return add();
  } finally {
    Reflect.deleteProperty(scene, "getObject");
  }
}

function isInView(control: SelectionControl, { viewBound }: IViewportInfo): boolean {
  const { startX, startY, endX, endY } = control.model;
  const edge = EDGE / control.getScene().getAncestorScale().scaleX;
  return (
    startX - edge < viewBound.right &&
    endX + edge > viewBound.left &&
    startY - edge < viewBound.bottom &&
    endY + edge > viewBound.top
  );
}
