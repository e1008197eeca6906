import type { IContextService, Injector } from "@univerjs/core";
import { IShortcutService, type KeyCode, MetaKeys } from "@univerjs/ui";

/** As browsers number them; the grid's list leaves them out. */
export const PAGE_UP = 33;
export const PAGE_DOWN = 34;
export const END = 35;
export const HOME = 36;

/** What the command of a key is given. */
export interface Way<To> {
  readonly to: To;
  /** Whether Shift is held: what lies between is selected. */
  readonly extend: boolean;
}

/** Each key leads somewhere, alone and with Shift. */
export function leadBy<To>(
  injector: Injector,
  id: string,
  keys: readonly (readonly [To, number])[],
  preconditions: (contexts: IContextService) => boolean,
): void {
  const shortcuts = injector.get(IShortcutService);
  for (const [to, key] of keys)
    for (const extend of [false, true])
      shortcuts.registerShortcut({
        id,
        binding: (key | (extend ? MetaKeys.SHIFT : 0)) as KeyCode,
        preconditions,
        staticParameters: { to, extend } satisfies Way<To>,
      });
}
