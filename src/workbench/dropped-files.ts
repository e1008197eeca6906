/** A file that is dropped anywhere on the page. */
export function takeDroppedFiles(open: (file: File) => void): void {
  const { classList } = document.body;
  const holdsFiles = (event: DragEvent) => event.dataTransfer?.types.includes("Files") ?? false;
  const listen = (type: "dragover" | "dragleave" | "drop", act: (event: DragEvent) => void) =>
    addEventListener(
      type,
      (event) => {
        if (!holdsFiles(event)) return;
        event.preventDefault();
        event.stopPropagation();
        act(event);
      },
      { capture: true },
    );
  listen("dragover", () => classList.add("dropping"));
  listen("dragleave", ({ relatedTarget }) => relatedTarget || classList.remove("dropping"));
  listen("drop", ({ dataTransfer }) => {
    classList.remove("dropping");
    const [file] = dataTransfer?.files ?? [];
    if (file) open(file);
  });
}
