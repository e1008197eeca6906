import type { Context } from "./batch";
import { FakeExcelError } from "./state";

/** Properties can be read once they were loaded and the batch has run. */
export class ClientObject {
  private readonly loaded = new Map<string, unknown>();
  isNullObject = false;

  constructor(
    readonly context: Context,
    protected readonly read: (property: string) => unknown = () => undefined,
  ) {}

  load(properties: string): this {
    this.context.later(`load ${properties}`, () => {
      const fresh = new Map<string, unknown>();
      for (const property of properties.split(",")) {
        const [first = "", ...rest] = property.trim().split("/");
        const value = fresh.get(first) ?? this.read(first);
        fresh.set(first, value);
        this.loaded.set(first, value);
        if (rest.length === 0 || !Array.isArray(value)) continue;
        for (const item of value as ClientObject[]) item.loadNow(rest);
      }
    });
    return this;
  }

  /** The rest of a path such as items/names/items/name. */
  loadNow([first = "", ...rest]: readonly string[]): void {
    const value = this.read(first);
    if (value instanceof ClientObject) value.loadNow(rest);
    else this.loaded.set(first, value);
    if (Array.isArray(value) && rest.length > 0) {
      for (const item of value as ClientObject[]) item.loadNow(rest);
    }
  }

  protected known<T>(property: string): T {
    if (!this.loaded.has(property)) throw new FakeExcelError("PropertyNotLoaded");
    return this.loaded.get(property) as T;
  }
}

export class Collection<T> extends ClientObject {
  get items(): T[] {
    return this.known("items");
  }
}
