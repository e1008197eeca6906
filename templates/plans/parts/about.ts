import type { Part, SheetPlan } from "../../../src/workbook/plan";
import { mill } from "../harrow-fen/mill";

interface About {
  /** Of the sheet: "About the dose". */
  readonly name: string;
  readonly title: string;
  readonly question: string;
  /** What the workbook says now: label, formula, unit, number format. */
  readonly answers: readonly (readonly [string, string, string, string])[];
  /** Sheet, and what to type there. */
  readonly typing: readonly (readonly [string, string])[];
  readonly notCovered: string;
  readonly cautions: readonly string[];
}

const columns = 4;

/** The first sheet of every workbook: the question, the answer now, what to type where, what is left out. */
export function aboutSheet(about: About): SheetPlan {
  const parts: Part[] = [];
  let row = 1;
  const text = (look: "title" | "heading" | "note" | "body" | "caution", words: string) =>
    parts.push({ kind: "text", at: `A${row++}`, look, text: words, span: columns });
  const section = (words: string) => {
    row++;
    text("heading", words);
  };

  text("title", about.title);
  text("heading", about.question);
  row++;
  text(
    "note",
    `${mill.name} is an invented mill (${mill.paper} t/d of testliner). Every number in this workbook is invented and plausible, and money is in no particular currency: put your own in their place.`,
  );
  section("The answer now");
  for (const [label, formula, unit, format] of about.answers)
    parts.push({
      kind: "block",
      at: `A${row++}`,
      look: ["label", "headline", "unit"],
      format: ["", format, ""],
      rows: [[label, `=${formula}`, unit]],
    });
  section("What to type where");
  text("body", "Shaded cells are yours; select one to see what it takes. All else is computed.");
  for (const [where, what] of about.typing) {
    parts.push({ kind: "text", at: `A${row}`, look: "body", text: where, span: 1 });
    parts.push({ kind: "text", at: `B${row++}`, look: "body", text: what, span: columns - 1 });
  }
  section("What it does not cover");
  text("body", about.notCovered);
  section("Caution");
  for (const words of about.cautions) text("caution", words);
  text(
    "caution",
    "The supplier's safety data sheet, the site's rules and local law come first, and licensed people do licensed work.",
  );
  row++;
  parts.push({
    kind: "block",
    at: `A${row}`,
    look: ["unit", "unit"],
    rows: [["Computed by", "=WETEND.LIBRARY.VERSION()"]],
  });
  return { name: about.name, widths: { A: 40, B: 14, C: 18, D: 40 }, parts };
}
