/** The tasks of the library whose cautions belong to what a function is used for. */
const BY_FAMILY: Readonly<Record<string, readonly string[]>> = {
  DOSE: ["Cooking", "Handling powder"],
  EFFLUENT: ["Effluent", "Confined spaces"],
  TRIAL: ["Laboratory", "Effluent"],
};

const BY_FUNCTION: Readonly<Record<string, readonly string[]>> = {
  "TRIAL.HANDSHEET": ["Laboratory"],
  "TRIAL.MAKEDOWN": ["Handling powder", "Cooking", "Laboratory"],
  "RETENTION.WHITEWATER": ["Storage", "Confined spaces"],
  "PARTITION.AFFINITY": ["Laboratory"],
};

export function cautionsOf(id: string): readonly string[] {
  return BY_FUNCTION[id] ?? BY_FAMILY[id.split(".")[0] as string] ?? [];
}
