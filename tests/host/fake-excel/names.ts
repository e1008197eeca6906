import type { Context } from "./batch";
import { ClientObject } from "./client-object";
import { fail } from "./state";

export class Names extends ClientObject {
  constructor(context: Context) {
    super(context, () => [...context.fake.names.keys()].map((name) => new Name(context, name)));
  }

  get items(): Name[] {
    return this.known("items");
  }

  add(name: string, formula: string): void {
    const { fake } = this.context;
    this.context.later(`add name ${name}`, () => {
      if (fake.names.has(name)) fail("ItemAlreadyExists");
      fake.names.set(name, formula);
    });
  }

  getItemOrNullObject(name: string): Name {
    const found = new Name(this.context, name);
    this.context.later("find name", () => {
      found.isNullObject = !this.context.fake.names.has(name);
    });
    return found;
  }
}

class Name extends ClientObject {
  constructor(
    context: Context,
    private readonly own: string,
  ) {
    super(context, () => own);
  }
  get name(): string {
    return this.known("name");
  }
  delete(): void {
    this.context.later(`delete name ${this.own}`, () => this.context.fake.names.delete(this.own));
  }
}
