import { createRoot } from "react-dom/client";
import type { FunctionReference } from "../help/reference";
import type { SheetHost } from "../host/host";
import { Pane } from "./pane";

/** The words about the functions lie beside the page that shows the pane. */
const REFERENCE = "reference.json";

/**
 * Shows the pane in an element. Without a host it stands alone: what needs no sheet is there, the rest says
 * what it needs. Gives what takes it away again.
 */
export async function mountPane(
  element: HTMLElement,
  host: SheetHost | undefined,
): Promise<() => void> {
  const answer = await fetch(new URL(REFERENCE, document.baseURI));
  if (!answer.ok) throw new Error(`${REFERENCE} could not be read (${answer.status}).`);
  const functions = (await answer.json()) as readonly FunctionReference[];
  const root = createRoot(element);
  root.render(<Pane host={host} functions={functions} />);
  return () => root.unmount();
}
