import { createContext, useContext } from "react";
import type { FunctionReference } from "../../help/reference";
import type { SheetHost } from "../../host/host";

export const TABS = ["Additives", "Safety", "Functions", "Templates", "Working"] as const;
export type Tab = (typeof TABS)[number];

/** What every part of the pane can reach. */
export interface PaneContext {
  /** The sheet beside the pane; undefined where the pane stands alone. */
  readonly host: SheetHost | undefined;
  readonly functions: readonly FunctionReference[];
  /** Opens a tab, and in it what is named: a function's id, a caution's name. */
  open(tab: Tab, item?: string): void;
  /** Says what was done, or why not. */
  say(notice: Notice): void;
}

export interface Notice {
  readonly kind: "done" | "refused";
  readonly text: string;
  /** What the person may choose to do about it. */
  readonly choice?: { readonly label: string; choose(): void };
}

export const paneContext = createContext<PaneContext | undefined>(undefined);

export function usePane(): PaneContext {
  const context = useContext(paneContext);
  if (context === undefined) throw new Error("This part stands outside the pane.");
  return context;
}
