import { useEffect, useRef } from "react";

/** Remembers what had the focus when something was opened, and gives it back when that is closed again. */
export function useReturnFocus(isOpen: boolean): { remember(): void } {
  const opener = useRef<HTMLElement | null>(null);
  useEffect(() => {
    if (isOpen) return;
    opener.current?.focus();
    opener.current = null;
  }, [isOpen]);
  return {
    remember() {
      if (document.activeElement instanceof HTMLElement) opener.current = document.activeElement;
    },
  };
}
