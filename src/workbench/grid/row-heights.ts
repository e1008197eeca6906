/**
 * Where many rows change, the grid measures those out of view in the browser's idle time, and from then on asks for
 * idle time without end: for each workbook that was ever open, and in one that is gone it breaks down.
 */
import type { Dependency } from "@univerjs/core";
import { RenderManagerService } from "@univerjs/engine-render";

/** The parts of the service that matter here: it is known by them, for the grid keeps it to itself. */
interface RowHeights {
  _autoHeightTasks: { readonly skeleton: { readonly worksheet: object | null } }[];
  _calculateLoopId: number | null;
  _calculateLoop(time: IdleDeadline): void;
}

export function measureRowsToEnd(): void {
  const { prototype } = RenderManagerService;
  const { registerRenderModule } = prototype;
  prototype.registerRenderModule = function (type, dependency: Dependency) {
    const service = (dependency[0] as { prototype?: Partial<RowHeights> }).prototype;
    if (service?._calculateLoop) endLoop(service as RowHeights);
    return registerRenderModule.call(this, type, dependency);
  };
}

function endLoop(service: RowHeights): void {
  const { _calculateLoop } = service;
  service._calculateLoop = function (time) {
    this._autoHeightTasks = this._autoHeightTasks.filter(({ skeleton }) => skeleton.worksheet);
    _calculateLoop.call(this, time);
    if (this._autoHeightTasks.length > 0 || this._calculateLoopId === null) return;
    cancelIdleCallback(this._calculateLoopId);
    this._calculateLoopId = null;
  };
}
