import { Range } from "./range";
import { type FakeWorkbook, fail } from "./state";
import { Workbook } from "./workbook";

/** What only leaves notes: any property can be set, any method called. */
export interface Noted {
  (...given: unknown[]): Noted;
  [property: string]: unknown;
}

const noted = (() => undefined) as unknown as Noted;

/** A batch: what was asked for since the last sync, and what it is asked of. */
export class Context {
  private queue: { what: string; act: () => void }[] = [];
  readonly application: Application;
  readonly workbook: Workbook;

  constructor(readonly fake: FakeWorkbook) {
    this.application = new Application(this);
    this.workbook = new Workbook(this);
  }

  later(what: string, act: () => void): void {
    this.queue.push({ what, act });
  }

  async sync(): Promise<void> {
    const queue = this.queue;
    this.queue = [];
    await Promise.resolve();
    const { failing } = this.fake;
    if (failing !== undefined && failing.before === undefined) fail(failing.code);
    for (const { what, act } of queue) {
      if (failing?.before?.test(what)) {
        this.fake.failing = undefined;
        fail(failing.code);
      }
      act();
    }
  }

  /** An object whose every property and method only leaves a note of what was done. */
  anything(path: string): Noted {
    const note = (what: string) => this.later(what, () => this.fake.done.push(what));
    return new Proxy(noted, {
      get: (_, key) => this.anything(`${path}.${String(key)}`),
      set: (_, key, value) => {
        note(
          `${path}.${String(key)} = ${typeof value === "object" ? JSON.stringify(value) : value}`,
        );
        return true;
      },
      apply: (_, __, given) => {
        const shown = given.map((one) => (one instanceof Range ? one.shown : JSON.stringify(one)));
        note(`${path}(${shown.join(", ")})`);
        return this.anything(`${path}(${shown.join(", ")})`);
      },
    });
  }
}

class Application {
  constructor(private readonly context: Context) {}

  calculate(kind: string): void {
    this.note(`calculate ${kind}`);
  }

  suspendScreenUpdatingUntilNextSync(): void {
    this.note("suspend screen updating");
  }

  createWorkbook(base64: string) {
    const { fake } = this.context;
    return { open: () => this.context.later("open workbook", () => fake.opened.push(base64)) };
  }

  private note(what: string): void {
    this.context.later(what, () => this.context.fake.done.push(what));
  }
}
