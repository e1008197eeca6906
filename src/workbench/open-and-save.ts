/** Puts onto the desk what a person chooses, and hands out what lies there. */
import type { FunctionsMetadata } from "../build/built-functions";
import { layOut } from "../workbook/layout/lay-out";
import type { Plan } from "../workbook/plan";
import { WorkbookRefusal } from "../workbook/workbook-refusal";
import type { Desk, Lying } from "./desk";

export class OpenAndSave {
  constructor(
    private readonly desk: Desk,
    private readonly metadata: FunctionsMetadata,
    /** Before another workbook lies there. */
    private readonly forget: () => void,
    private readonly tell: (text: string | undefined) => void,
  ) {}

  openTemplate(plan: Plan): void {
    if (!this.#mayPutAway()) return;
    this.tell(undefined);
    const planned = layOut(plan);
    const fileName = `${plan.id}.xlsx`;
    this.#put({ title: plan.title, fileName, source: { kind: "template", planned } });
  }

  async openFile(file: File): Promise<void> {
    if (!this.#mayPutAway()) return;
    this.tell(undefined);
    try {
      const { openFile } = await import("./book/files");
      const source = await openFile(file, this.metadata);
      this.#put({ title: file.name, fileName: file.name, source });
    } catch (problem) {
      if (!(problem instanceof WorkbookRefusal)) throw problem;
      this.tell(`${file.name}: ${problem.message}`);
    }
  }

  async save(): Promise<void> {
    const { lying } = this.desk;
    if (!lying) return;
    const { saveFile } = await import("./book/files");
    const { bytes, notes } = await saveFile(this.#toSave(lying), this.metadata);
    download(bytes, lying.fileName);
    this.desk.saved();
    this.#tellAll(notes);
  }

  /** For a colleague without the add-in. */
  async saveValuesCopy(): Promise<void> {
    const { lying } = this.desk;
    if (!lying) return;
    const { saveValues } = await import("./book/files");
    const { bytes, notes } = await saveValues(this.#toSave(lying), this.metadata);
    download(bytes, lying.fileName.replace(/\.[^.]*$/, ".values.xlsx"));
    this.#tellAll(notes);
  }

  #mayPutAway(): boolean {
    return (
      !this.desk.changed ||
      confirm("What you changed in this workbook is not saved. Open another one?")
    );
  }

  #put(lying: Lying): void {
    this.forget();
    this.desk.put(lying);
    (document.getElementById("title") as HTMLElement).textContent = lying.title;
    document.title = `${lying.title} · Dosewright workbench`;
  }

  #toSave({ source }: Lying) {
    const { desk } = this;
    return {
      book: desk.read(),
      frame: desk.beside.frame(),
      source,
      reshapings: desk.reshapings,
      atFirst: desk.atFirst,
    };
  }

  #tellAll(notes: readonly string[]): void {
    this.tell(notes.length > 0 ? notes.join(" ") : undefined);
  }
}

function download(bytes: Uint8Array, name: string): void {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([bytes as Uint8Array<ArrayBuffer>]));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}
