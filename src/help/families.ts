/** A step of the work: the functions whose ids begin with its name. */
export interface Family {
  readonly id: string;
  /** What the family is about, as it is said to a person. */
  readonly title: string;
}

/** In the order of the work: from the headbox to the proof. */
export const FAMILIES: readonly Family[] = [
  { id: "PARTITION", title: "Where the additive goes" },
  { id: "RETENTION", title: "What stays in the sheet" },
  { id: "DOSE", title: "What to set" },
  { id: "CHARGE", title: "Substitution and charge" },
  { id: "EFFLUENT", title: "What leaves" },
  { id: "STRENGTH", title: "What it does to the sheet" },
  { id: "REFINING", title: "The alternative" },
  { id: "COST", title: "What it is worth" },
  { id: "TRIAL", title: "The ladder that proves it" },
  { id: "UNCERTAINTY", title: "How sure it is" },
  { id: "LIBRARY", title: "The data" },
];

/** The families that have functions, each with its own, in the order of the work. */
export function byFamily<F extends { readonly family: string }>(
  functions: readonly F[],
): readonly (Family & { readonly functions: readonly F[] })[] {
  return FAMILIES.map((family) => ({
    ...family,
    functions: functions.filter((one) => one.family === family.id),
  })).filter(({ functions: own }) => own.length > 0);
}
