/** What is said of a function: read once from its doc comment, shown by the pane, the help pages and the README. */
export interface FunctionReference {
  /** As the metadata has it: "DOSE.PUMP". */
  readonly id: string;
  /** As a cell has it: "WETEND.DOSE.PUMP". */
  readonly name: string;
  readonly family: string;
  readonly description: string;
  readonly arguments: readonly ArgumentReference[];
  readonly returns: string;
  /** The equation in TeX, and the same set as MathML. */
  readonly equation: string;
  readonly mathml: string;
  readonly range: string;
  readonly source: string;
  /** Further words under which a person of the trade looks for it. */
  readonly words: readonly string[];
  readonly examples: readonly ExampleReference[];
}

export interface ArgumentReference {
  readonly name: string;
  readonly description: string;
  readonly unit: string;
  readonly optional: boolean;
  /** The words to choose from, where it is a choice. */
  readonly choices?: readonly string[];
}

export interface ExampleReference {
  readonly formula: string;
  readonly answer: string;
}

/** The namespace that the manifest gives to the functions. */
export const NAMESPACE = "WETEND";
