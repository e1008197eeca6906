import { useEffect, useState } from "react";
import type { Selection, SheetHost } from "../../host/host";
import { placeKey } from "../../host/place";

/** The selection, followed; and how often the selected cell was computed since, so that what shows it follows too. */
export function useSelection(host: SheetHost): {
  readonly selection: Selection | undefined;
  readonly computed: number;
} {
  const [selection, setSelection] = useState<Selection>();
  const [computed, setComputed] = useState(0);

  useEffect(() => {
    let stopped = false;
    const stop = host.watchSelection((next) => setSelection(next));
    host.readSelection().then(
      (first) => {
        if (!stopped) setSelection((known) => known ?? first);
      },
      () => setSelection(undefined),
    );
    return () => {
      stopped = true;
      stop();
    };
  }, [host]);

  const watched = selection?.cell.address;
  useEffect(() => {
    if (watched === undefined) return;
    return host.watchCalls((address) => {
      if (placeKey(address) === placeKey(watched)) setComputed((count) => count + 1);
    });
  }, [host, watched]);

  return { selection, computed };
}
