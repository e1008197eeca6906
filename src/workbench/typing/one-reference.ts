/**
 * A reference of the formula that is being written is pointed at anew, or its frame is dragged. The grid writes all
 * references anew for that: without their $, and in each other's places where the caret does not stand behind the last
 * of them. Here only the one is written.
 */
import { ICommandService, type Injector, type IRange } from "@univerjs/core";
import { Editor, IEditorService, ReplaceTextRunsCommand } from "@univerjs/docs-ui";
import { type ISequenceNode, LexerTreeBuilder } from "@univerjs/engine-formula";
import {
  type ISelectionWithStyle,
  type ISetSelectionsOperationParams,
  SetSelectionsOperation,
} from "@univerjs/sheets";
import { RefSelectionsRenderService } from "@univerjs/sheets-formula-ui";
import type { SelectionControl } from "@univerjs/sheets-ui";
import { isFormulaEditor, textIn } from "./both-editors";
import {
  referenceAt,
  referenceBefore,
  type Written,
  withCells,
  withoutReference,
} from "./references";

/** What the grid tells its listeners through. */
interface Told<T> {
  next(what: T): void;
}

/** The parts of the service that matter here; its types call some of them private. */
interface Service {
  readonly _injector: Injector;
  /** Whether cells that are pointed at are put behind the caret; else in the place of the reference before it. */
  readonly _skipLastEnabled: boolean;
  readonly _selectionMoveStart$: Told<unknown>;
  readonly _selectionMoving$: Told<unknown>;
  readonly _selectionMoveEnd$: Told<unknown>;
  disposeWithMe(what: unknown): void;
  getSelectionControls(): readonly SelectionControl[];
  resetSelectionsByModelData(frames: readonly ISelectionWithStyle[]): void;
  getActiveSelectionControl(): SelectionControl | undefined;
  getSelectionDataWithStyle(): unknown[];
  newSelectionControl(...of: unknown[]): SelectionControl;
  _initUserActionSyncListener(): void;
}

/** What the button of the mouse is down for. */
let doing: "pointing" | "dragging" | undefined;

/** The grid writes nothing where it finds no caret. */
let caretHidden = false;

export function writeOneReference(): void {
  const prototype = RefSelectionsRenderService.prototype as unknown as Service;
  if (!prototype._initUserActionSyncListener)
    throw new Error("The grid points at cells in another way: see typing/one-reference.");
  keepOrder(prototype);
  hideCaret();
  takeDragged(prototype);
  takePointedAt(prototype);
}

/** Which part of the formula a frame is for; NaN for one that has just been added. */
const partOf = (control: SelectionControl): number => Number(control.currentStyle.id ?? Number.NaN);

/** Frames in the order of the formula, wherever the caret stands: one that is dragged stays itself. */
function keepOrder(prototype: Service): void {
  const { resetSelectionsByModelData, getActiveSelectionControl, getSelectionDataWithStyle } =
    prototype;
  prototype.resetSelectionsByModelData = function (frames) {
    const inOrder = [...frames].sort((a, b) => Number(a.style?.id) - Number(b.style?.id));
    resetSelectionsByModelData.call(this, inOrder);
  };
  prototype.getActiveSelectionControl = function () {
    const written = writtenIn(this);
    const index = written ? referenceBefore(written.parts, written.caret) : -1;
    const controls = this.getSelectionControls();
    return (
      controls.find((control) => Number.isNaN(partOf(control))) ??
      controls.find((control) => partOf(control) === index) ??
      getActiveSelectionControl.call(this)
    );
  };
  // The last of them is the one that is written.
  prototype.getSelectionDataWithStyle = function () {
    const all = getSelectionDataWithStyle.call(this);
    const active = this.getActiveSelectionControl();
    const index = active ? this.getSelectionControls().indexOf(active) : -1;
    return index < 0 ? all : [...all.toSpliced(index, 1), all[index]];
  };
}

function hideCaret(): void {
  const { prototype } = Editor;
  const { getSelectionRanges } = prototype;
  prototype.getSelectionRanges = function () {
    return caretHidden ? [] : getSelectionRanges.call(this);
  };
}

/** Does something before the grid's listeners are told, who then write nothing if it is done with. */
function before<T>(told: Told<T>, act: (what: T) => boolean): void {
  const next = told.next.bind(told);
  told.next = (what) => {
    caretHidden = act(what);
    try {
      next(what);
    } finally {
      caretHidden = false;
    }
  };
}

function takeDragged(prototype: Service): void {
  const { newSelectionControl } = prototype;
  prototype.newSelectionControl = function (...of) {
    const control = newSelectionControl.call(this, ...of);
    const writeDragged = (cells: IRange): boolean => {
      doing = "dragging";
      const written = writtenIn(this);
      const reference = written && referenceAt(written.parts, partOf(control));
      if (reference) write(written, withCells(written, reference, cells));
      return reference !== undefined;
    };
    before(control.selectionMoving$, writeDragged);
    before(control.selectionScaling$, writeDragged);
    // Cells that have a frame can be pointed at as others can.
    control.model.isEqual = () => false;
    return control;
  };
}

/** What is pointed at anew the grid writes behind the caret, as it does at first: the reference before it is taken out. */
function takePointedAt(prototype: Service): void {
  const { _initUserActionSyncListener } = prototype;
  prototype._initUserActionSyncListener = function () {
    before(this._selectionMoveStart$, () => {
      doing = "pointing";
      return false;
    });
    before(this._selectionMoving$, () => makePlace(this));
    before(this._selectionMoveEnd$, () => {
      const done = doing;
      doing = undefined;
      if (done === "pointing") makePlace(this);
      return done === "dragging";
    });
    const byKeys = ({ id, params }: { id: string; params?: object }) => {
      if (id !== SetSelectionsOperation.id) return;
      if ((params as ISetSelectionsOperationParams).extra === "formula-editor") makePlace(this);
    };
    this.disposeWithMe(this._injector.get(ICommandService).onCommandExecuted(byKeys));
    _initUserActionSyncListener.call(this);
  };
}

/** Frames that were added, and whose cells stand before the caret by now. */
const placed = new WeakSet<SelectionControl>();

function makePlace(service: Service): false {
  const added = service.getSelectionControls().find((control) => Number.isNaN(partOf(control)));
  const isMore = added !== undefined && !placed.has(added);
  if (added) placed.add(added);
  const written = service._skipLastEnabled ? undefined : writtenIn(service);
  const reference =
    written && referenceAt(written.parts, referenceBefore(written.parts, written.caret));
  if (!reference) return false;
  const { text, caret } = written;
  const withMore = { text: `${text.slice(0, caret)},${text.slice(caret)}`, caret: caret + 1 };
  write(written, isMore ? withMore : withoutReference(written, reference));
  return false;
}

interface InEditor extends Written {
  readonly editor: Readonly<Editor>;
  readonly parts: readonly (ISequenceNode | string)[];
  readonly injector: Injector;
}

function writtenIn({ _injector: injector }: Service): InEditor | undefined {
  const editor = injector.get(IEditorService).getFocusEditor();
  const text = editor && isFormulaEditor(editor) ? textIn(editor) : "";
  const caret = editor?.getSelectionRanges()[0]?.startOffset;
  if (!editor || !text.startsWith("=") || caret === undefined) return undefined;
  const parts = injector.get(LexerTreeBuilder).sequenceNodesBuilder(text.slice(1)) ?? [];
  return { editor, text, parts, caret, injector };
}

function write({ editor, text, injector }: InEditor, next: Written): void {
  const unitId = editor.getEditorId();
  if (next.text !== text) {
    const body = { dataStream: next.text, textRuns: [] };
    injector
      .get(ICommandService)
      .syncExecuteCommand(ReplaceTextRunsCommand.id, { unitId, body, textRanges: null });
    // At once: by where the caret stands the grid knows whether it adds a reference.
    editor.setSelectionRanges([{ startOffset: next.caret, endOffset: next.caret }]);
  }
  // The press on the grid took the focus.
  injector.get(IEditorService).focus(unitId);
}
