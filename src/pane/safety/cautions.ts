import { ADDITIVES } from "../../library/additives";
import { COMPONENTS } from "../../library/components";
import { cautionsFor, FIRST_OF_ALL } from "../../library/safety";
import { TASKS } from "../../library/tasks";
import type { Part, Plan } from "../../workbook/plan";

/** What cautions can be asked for: tasks first, then what is handled. */
export const SUBJECTS = [
  { label: "Tasks", names: TASKS.map(({ name }) => name) },
  { label: "Additives", names: ADDITIVES.map(({ name }) => name) },
  { label: "Components of the furnish", names: COMPONENTS.map(({ name }) => name) },
] as const;

const isTask = (name: string) => TASKS.some((task) => task.name === name);

/** The cautions of a task or an additive, without the sentence that closes them all. */
export function ownCautions(name: string): readonly string[] {
  return cautionsFor(name).filter((caution) => caution !== FIRST_OF_ALL);
}

/** A caution in pieces: words, and the tasks that it sends the reader to. */
export function splitTasks(
  caution: string,
  about: string,
): readonly { readonly text: string; readonly isTask: boolean }[] {
  const names = TASKS.map(({ name }) => name).filter((name) => name !== about);
  return caution
    .split(new RegExp(`\\b(${names.join("|")})\\b`))
    .filter((text) => text !== "")
    .map((text) => ({ text, isTask: names.includes(text) }));
}

/** The tasks whose cautions belong to a subject, since its own cautions name them. */
export function tasksNamed(name: string): readonly string[] {
  const pieces = ownCautions(name).flatMap((caution) => splitTasks(caution, name));
  const named = new Set(pieces.filter((piece) => piece.isTask).map(({ text }) => text));
  return TASKS.map((task) => task.name).filter((task) => named.has(task));
}

/** A sheet to print: the cautions, for an additive those of the tasks that they name, and what comes first of all. */
export function cautionSheet(name: string): Plan {
  const parts: Part[] = [];
  const add = (text: string, look: "title" | "heading" | "body" | "caution") => {
    parts.push({ kind: "text", at: `A${parts.length + 1}`, text, look, span: 1 });
  };
  add(`Cautions: ${name}`, "title");
  for (const caution of ownCautions(name)) add(caution, "body");
  if (!isTask(name)) {
    for (const task of tasksNamed(name)) {
      add(task, "heading");
      for (const caution of ownCautions(task)) add(caution, "body");
    }
  }
  add(FIRST_OF_ALL, "caution");
  return {
    id: "cautions",
    title: `Cautions: ${name}`,
    question: `What is to be kept in mind with ${name}?`,
    sheets: [{ name: "Cautions", widths: { A: 95 }, print: { pagesWide: 1 }, parts }],
  };
}

export { FIRST_OF_ALL };
