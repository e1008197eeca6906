import type { Grid } from "../../../src/workbench/grid/grid";

export interface Command {
  readonly id: string;
  readonly params?: unknown;
}
interface Registered {
  readonly id: string;
  readonly handler: (accessor: unknown, params: unknown) => unknown;
}
type Listener = (command: Command) => void;

/** The grid's command service, as far as who follows it listens, and what they registered with it. */
export class Commands {
  readonly #before: Listener[] = [];
  readonly #after: Listener[] = [];
  readonly #handlers = new Map<string, Registered["handler"]>();

  beforeCommandExecuted(listener: Listener): void {
    this.#before.push(listener);
  }

  onCommandExecuted(listener: Listener): void {
    this.#after.push(listener);
  }

  registerCommand({ id, handler }: Registered): void {
    this.#handlers.set(id, handler);
  }

  /** A command that runs others while it runs. */
  run(command: Command, ...within: Command[]): void {
    for (const listener of this.#before) listener(command);
    this.#handlers.get(command.id)?.(undefined, command.params);
    for (const one of within) this.run(one);
    for (const listener of this.#after) listener(command);
  }

  /** A grid in which there is nothing else. */
  get grid(): Grid {
    return { injector: { get: () => this } } as unknown as Grid;
  }
}
