/** The comments of a part, changed in their elements: what is not changed stays to the letter. */
import { readXml, type XmlElement, type XmlHandlers } from "../xml";
import { escapeText, unescapeText } from "../xml-text";
import type { CommentNow } from "./comment-changes";
import { type Replacement, splice } from "./splice";

interface Span {
  readonly start: number;
  readonly end: number;
}

/** A text of a comment: the only one, or that of one of its runs. */
interface TextSpan extends Span {
  readonly said: string;
}

interface CommentElement extends Span {
  readonly element: XmlElement;
  readonly texts: readonly TextSpan[];
  /** What stands in its rich text one after the other. */
  readonly runs: readonly Span[];
}

class CommentReader implements XmlHandlers {
  readonly comments: CommentElement[] = [];
  readonly #open: XmlElement[] = [];
  #texts: TextSpan[] = [];
  #runs: Span[] = [];
  #said = "";

  open(element: XmlElement): void {
    this.#open.push(element);
    this.#said = "";
    if (isComment(element.name)) [this.#texts, this.#runs] = [[], []];
  }

  text(run: string): void {
    this.#said += run;
  }

  close(name: string, end: number): void {
    const element = this.#open.pop() as XmlElement;
    const { start } = element;
    if (name === "t")
      this.#texts.push({ start, end, said: unescapeText(this.#said).replaceAll("\r\n", "\n") });
    if (name === "r" || name === "rPh") this.#runs.push({ start, end });
    if (isComment(name))
      this.comments.push({ element, start, end, texts: this.#texts, runs: this.#runs });
  }
}

const isComment = (name: string) => name === "comment" || name === "threadedComment";

export const textXml = (prefix: string, text: string) =>
  `<${prefix}t xml:space="preserve">${escapeText(text)}</${prefix}t>`;

/** By the cells that they have in the part. */
export function patchEntries(
  path: string,
  xml: string,
  kept: ReadonlyMap<string, CommentNow | null>,
): string {
  const reader = new CommentReader();
  readXml(path, xml, reader);
  const replacements = reader.comments.flatMap((comment): Replacement[] => {
    const { element, start, end } = comment;
    const now = kept.get((element.attributes.ref ?? "").toUpperCase());
    if (now === undefined) return [];
    if (now === null) return [{ start, end, text: "" }];
    const { innerStart, prefix } = element;
    const tag = xml
      .slice(start, innerStart)
      .replace(/(\sref=)(["'])[^"']*\2/, (_, ref, quote) => `${ref}${quote}${now.cell}${quote}`);
    if (now.text === undefined) return [{ start, end: innerStart, text: tag }];
    if (comment.texts.length > 0)
      return [{ start, end: innerStart, text: tag }, ...saying(prefix, comment, now.text)];
    const inner = `<${prefix}text>${textXml(prefix, now.text)}</${prefix}text>`;
    const text = `${tag.replace(/\s*\/>$/, ">")}${inner}</${prefix}${element.name}>`;
    return [{ start, end, text }];
  });
  return splice(xml, replacements);
}

/** Runs at the beginning that say what they said keep their looks; the next one says the rest in its own. */
function saying(prefix: string, { texts, runs }: CommentElement, text: string): Replacement[] {
  let rest = text;
  for (const [at, { start, end, said }] of texts.entries()) {
    // Comments are read without the blanks around them.
    const its = rest === text ? said.trimStart() : said;
    const stays = at < texts.length - 1 && rest.length > its.length && rest.startsWith(its);
    if (!stays) {
      const behind = runs.filter((run) => run.start >= end);
      return [
        { start, end, text: textXml(prefix, rest) },
        ...behind.map((run) => ({ start: run.start, end: run.end, text: "" })),
      ];
    }
    rest = rest.slice(its.length);
  }
  return [];
}
