/** Cells that are followed, and what ties them together. */
import type { Area } from "../../workbook/book";

/** Where an area now is. Without rows or columns its cells are gone, and it tells where they were. */
export interface Followed {
  readonly sheetId: string;
  readonly area: Area;
  /** Which move of cells put it there, counted from 1: what it lies on was there before. */
  readonly putBy?: number;
  readonly bond: Bond;
  /** Where a rule is put, those of its kind leave the cells. */
  readonly kind?: RuleKind;
  /** Of a rule: the cells that its formulas name. */
  readonly reads?: readonly Read[];
}

/**
 * What ties cells together: they are named by one reference, which goes elsewhere only with all of them; they
 * have one rule, which goes along with each; or one comment stands at them, which goes along with sorted rows, too.
 */
export type Bond = "named" | "ruled" | "noted";

export type RuleKind = "entry rule" | "format";

export const isGone = ({ area }: Pick<Followed, "area">) => area.rows === 0 || area.columns === 0;

/** How rows, or columns, are named. */
export interface Naming {
  /** Of the first and of the last one, whether it is named by its distance, without a dollar sign. */
  readonly relative: readonly [boolean, boolean];
  /** Where they stand beside the cell itself, they stay there: how far from it, and how many they are. */
  readonly beside?: { readonly distance: number; readonly size: number };
}

/** For all cells of the rule, where they stand beside the cell itself. */
export interface Read extends Followed {
  readonly rows: Naming;
  readonly columns: Naming;
}
