/** Why the model gives no number: the input cannot be, or no answer exists for it. */
export type RefusalKind = "impossible input" | "no answer";

/**
 * The one kind of error that the model throws. Its message is a sentence for the person at the sheet:
 * it names the quantity, the value given, and what to do. Anything else that is thrown is a bug.
 */
export class Refusal extends Error {
  override readonly name = "Refusal";

  constructor(
    readonly kind: RefusalKind,
    message: string,
  ) {
    super(message);
  }
}

/** Stops the calculation: the input contradicts nature or itself. */
export function impossible(message: string): never {
  throw new Refusal("impossible input", message);
}

/** Stops the calculation: the input is sound, but nothing answers it. */
export function noAnswer(message: string): never {
  throw new Refusal("no answer", message);
}
