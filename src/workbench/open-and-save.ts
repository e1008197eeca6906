/** Puts onto the desk what a person chooses, and hands out what lies there. */
import type { FunctionsMetadata } from "../build/built-functions";
import { layOut } from "../workbook/layout/lay-out";
import type { Plan } from "../workbook/plan";
import { WorkbookRefusal } from "../workbook/workbook-refusal";
import type { Desk, Lying } from "./desk";

/** A person who saves does not wait for longer. */
const PATIENCE = 20_000;
const UNFINISHED =
  "Some formulas were still being computed: the file has their values from before. Save it again later.";

export class OpenAndSave {
  constructor(
    private readonly desk: Desk,
    private readonly metadata: FunctionsMetadata,
    /** Resolves when what is being typed is taken, and computed. */
    private readonly finish: () => Promise<void>,
    private readonly tell: (text: string | undefined) => void,
    /** Before another workbook lies there. */
    private readonly forget: () => void,
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
    const { saveFile } = await import("./book/files");
    const unfinished = await this.#finish();
    const { lying, changes } = this.desk;
    if (!lying) return;
    const { bytes, notes } = await saveFile(this.#toSave(lying), this.metadata);
    download(bytes, lying.fileName);
    this.desk.saved(changes);
    this.#tellAll([...notes, ...unfinished]);
  }

  /** For a colleague without the add-in. */
  async saveValuesCopy(): Promise<void> {
    const { saveValues } = await import("./book/files");
    const unfinished = await this.#finish();
    const { lying } = this.desk;
    if (!lying) return;
    const { bytes, notes } = await saveValues(this.#toSave(lying), this.metadata);
    download(bytes, lying.fileName.replace(/\.[^.]*$/, ".values.xlsx"));
    this.#tellAll([...notes, ...unfinished]);
  }

  /** What is said where the last entry takes too long to be computed. */
  async #finish(): Promise<readonly string[]> {
    const patience = new Promise<"late">((resolve) => setTimeout(() => resolve("late"), PATIENCE));
    return (await Promise.race([this.finish(), patience])) === "late" ? [UNFINISHED] : [];
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
