import {
  configure,
  type Entry,
  type FileEntry,
  Uint8ArrayReader,
  Uint8ArrayWriter,
  ZipReader,
  ZipWriter,
} from "@zip.js/zip.js";
import { WorkbookRefusal } from "../workbook-refusal";
import { refuseOtherFiles } from "./file-kind";
import { type Limits, smallPart, usualLimits } from "./limits";

configure({ useWebWorkers: false });

/** The parts of an .xlsx file by their paths ("xl/workbook.xml"). Case does not count. */
export interface WorkbookPackage {
  readonly paths: readonly string[];
  has(path: string): boolean;
  /** Hands on the text of a part as it is unpacked, so that no large part is held as a whole. */
  stream(path: string, onText: (chunk: string) => void): Promise<void>;
  text(path: string): Promise<string>;
  /**
   * The package with some parts replaced, added, or (null) left out. Every other part keeps its
   * compressed bytes as they are.
   */
  rewrite(changes: ReadonlyMap<string, string | null>): Promise<Uint8Array>;
}

const damaged = () => new WorkbookRefusal("The file is damaged: its zip archive cannot be read.");

/** Problems of the archive become a refusal; ours pass as they are. */
async function asRefusal<T>(work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (problem) {
    if (problem instanceof WorkbookRefusal) throw problem;
    const reason = problem instanceof Error ? problem.message : "";
    if (/unsafe filename/i.test(reason))
      throw new WorkbookRefusal("The file holds a part whose name points outside the package.");
    throw damaged();
  }
}

function refuseUnfit(entries: readonly Entry[], limits: Limits): void {
  if (entries.length > limits.entries)
    throw new WorkbookRefusal(`The file holds ${entries.length} parts; a workbook has far fewer.`);
  const seen = new Set<string>();
  for (const { filename, encrypted } of entries) {
    if (encrypted)
      throw new WorkbookRefusal("The file is encrypted: save a copy without a password first.");
    const key = filename.toLowerCase();
    if (seen.has(key)) throw new WorkbookRefusal(`The file holds ${filename} twice.`);
    seen.add(key);
  }
}

class Unpacking {
  #bytes = 0;

  constructor(private readonly limits: Limits) {}

  /** Refuses by what the archive declares, before anything is unpacked. */
  check({ filename, uncompressedSize, compressedSize }: FileEntry): void {
    const { partBytes, ratio } = this.limits;
    if (uncompressedSize > partBytes)
      throw new WorkbookRefusal(`The file's ${filename} is too large to be read.`);
    if (uncompressedSize > smallPart && uncompressedSize > ratio * compressedSize)
      throw new WorkbookRefusal(
        `The file's ${filename} unpacks to more than ${ratio} times its size, as no workbook does.`,
      );
  }

  /** Counts what really comes out. */
  take(bytes: number, declared: number, received: number): void {
    this.#bytes += bytes;
    if (received > declared) throw damaged();
    if (this.#bytes > this.limits.readBytes)
      throw new WorkbookRefusal("The file is too large to be read.");
  }
}

function textSink(entry: FileEntry, unpacking: Unpacking, onText: (chunk: string) => void) {
  const decoder = new TextDecoder("utf-8", { fatal: true, ignoreBOM: true });
  let received = 0;
  const decode = (chunk?: Uint8Array) => {
    try {
      return chunk ? decoder.decode(chunk, { stream: true }) : decoder.decode();
    } catch {
      throw new WorkbookRefusal(`The file's ${entry.filename} is not encoded as UTF-8.`);
    }
  };
  return new WritableStream<Uint8Array>({
    write(chunk) {
      received += chunk.length;
      unpacking.take(chunk.length, entry.uncompressedSize, received);
      onText(decode(chunk));
    },
    close: () => onText(decode()),
  });
}

/** Opens the zip package of a workbook from the bytes of its file, within limits. */
export async function openPackage(
  bytes: Uint8Array,
  limits: Limits = usualLimits,
): Promise<WorkbookPackage> {
  refuseOtherFiles(bytes, limits);
  const reader = new ZipReader(new Uint8ArrayReader(bytes), {
    checkOverlappingEntry: true,
    checkCrc32: true,
    filenameValidation: "strict",
  });
  const entries = await asRefusal(() => reader.getEntries());
  refuseUnfit(entries, limits);
  const byPath = new Map(entries.map((entry) => [entry.filename.toLowerCase(), entry]));
  const unpacking = new Unpacking(limits);

  async function stream(path: string, onText: (chunk: string) => void): Promise<void> {
    const entry = byPath.get(path.toLowerCase());
    if (!entry || entry.directory)
      throw new WorkbookRefusal(`The file is damaged: it lacks its part ${path}.`);
    unpacking.check(entry);
    // What the receiver throws is its own affair and not a fault of the archive.
    let thrown: { problem: unknown } | undefined;
    const receive = (chunk: string) => {
      try {
        onText(chunk);
      } catch (problem) {
        thrown = { problem };
        throw problem;
      }
    };
    await asRefusal(() => entry.getData(textSink(entry, unpacking, receive))).catch((refusal) => {
      throw thrown ? thrown.problem : refusal;
    });
  }

  return {
    paths: entries.map(({ filename }) => filename),
    has: (path) => byPath.has(path.toLowerCase()),
    stream,
    async text(path) {
      const chunks: string[] = [];
      await stream(path, (chunk) => chunks.push(chunk));
      return chunks.join("");
    },
    rewrite: (changes) => asRefusal(() => rewrite(entries, changes)),
  };
}

async function rewrite(
  entries: readonly Entry[],
  changes: ReadonlyMap<string, string | null>,
): Promise<Uint8Array> {
  const writer = new ZipWriter(new Uint8ArrayWriter(), { extendedTimestamp: false });
  const encoder = new TextEncoder();
  const waiting = new Map([...changes].map(([path, text]) => [path.toLowerCase(), { path, text }]));
  const pack = (path: string, text: string, entry?: FileEntry) =>
    writer.add(path, new Uint8ArrayReader(encoder.encode(text)), {
      lastModDate: entry?.lastModDate ?? new Date(1980, 0, 1),
    });
  for (const entry of entries) {
    const change = waiting.get(entry.filename.toLowerCase());
    waiting.delete(entry.filename.toLowerCase());
    if (entry.directory) await writer.add(entry.filename, undefined, { entry, directory: true });
    else if (!change) {
      const packed = await entry.getData(new Uint8ArrayWriter(), { passThrough: true });
      await writer.add(entry.filename, new Uint8ArrayReader(packed), { entry, passThrough: true });
    } else if (change.text !== null) await pack(entry.filename, change.text, entry);
  }
  for (const { path, text } of waiting.values()) if (text !== null) await pack(path, text);
  return writer.close();
}
