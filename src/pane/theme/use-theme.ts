import type { Theme } from "@fluentui/react-components";
import { useSyncExternalStore } from "react";
import type { SheetHost } from "../../host/host";
import { darkTheme, lightTheme } from "./theme";

const dark = () => window.matchMedia("(prefers-color-scheme: dark)");

/** The host's theme where it says which; else the system's, followed as it changes. */
export function useTheme(host: SheetHost | undefined): Theme {
  const systemIsDark = useSyncExternalStore(
    (changed) => {
      const query = dark();
      query.addEventListener("change", changed);
      return () => query.removeEventListener("change", changed);
    },
    () => dark().matches,
  );
  const shown = host?.theme() ?? (systemIsDark ? "dark" : "light");
  return shown === "dark" ? darkTheme : lightTheme;
}
