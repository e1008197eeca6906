import { readShortXml } from "../xml";
import type { WorkbookPackage } from "./open-package";

export interface Relationship {
  readonly id: string;
  /** The last word of its type, which is the same in both editions of the standard: "worksheet". */
  readonly type: string;
  /** Path of the part inside the package; undefined where it points outside. */
  readonly path: string | undefined;
}

/** The path that a target means, seen from the part that refers to it. */
function resolve(from: string, target: string): string {
  const steps = target.startsWith("/") ? [] : from.split("/").slice(0, -1);
  for (const step of target.split("/")) {
    if (step === "..") steps.pop();
    else if (step !== "." && step !== "") steps.push(step);
  }
  return steps.join("/");
}

export function relationshipsPath(part: string): string {
  const slash = part.lastIndexOf("/") + 1;
  return `${part.slice(0, slash)}_rels/${part.slice(slash)}.rels`;
}

/** What a part refers to; "" stands for the package itself. */
export async function relationshipsOf(
  file: WorkbookPackage,
  part: string,
): Promise<readonly Relationship[]> {
  const path = relationshipsPath(part);
  if (!file.has(path)) return [];
  const found: Relationship[] = [];
  readShortXml(path, await file.text(path), {
    open({ name, attributes: { Id, Type, Target, TargetMode } }) {
      if (name !== "Relationship" || !Id || !Type || Target === undefined) return;
      const external = TargetMode === "External";
      found.push({
        id: Id,
        type: Type.slice(Type.lastIndexOf("/") + 1),
        path: external ? undefined : resolve(part, Target),
      });
    },
  });
  return found;
}

/** The parts of that kind, of those that a part refers to. */
export const partsOf = (
  file: WorkbookPackage,
  related: readonly Relationship[],
  kind: string,
): string[] =>
  related.flatMap(({ type, path }) =>
    type === kind && path !== undefined && file.has(path) ? [path] : [],
  );
