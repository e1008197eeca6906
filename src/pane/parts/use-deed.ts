import { useState } from "react";
import { HostRefusal } from "../../host/host";
import { Refusal } from "../../model/refusal";
import { type Notice, usePane } from "./pane-context";

/** Runs what a button does to the sheet: says what came of it, and lets nothing be pressed twice meanwhile. */
export function useDeed(): {
  readonly busy: boolean;
  run(deed: () => Promise<string | Notice>): void;
} {
  const { say } = usePane();
  const [busy, setBusy] = useState(false);

  async function work(deed: () => Promise<string | Notice>): Promise<void> {
    setBusy(true);
    try {
      const outcome = await deed();
      say(typeof outcome === "string" ? { kind: "done", text: outcome } : outcome);
    } catch (problem) {
      say({ kind: "refused", text: reasonOf(problem) });
    } finally {
      setBusy(false);
    }
  }
  return { busy, run: (deed) => void work(deed) };
}

/** A host's refusal is a sentence for the person; anything else is a fault, and said to be one. */
export function reasonOf(problem: unknown): string {
  if (problem instanceof HostRefusal || problem instanceof Refusal) return problem.message;
  const what = problem instanceof Error ? problem.message : String(problem);
  return `A fault in Dosewright stopped this: ${what}`;
}
