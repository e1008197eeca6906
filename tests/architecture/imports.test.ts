import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import ts from "typescript";
import { describe, expect, test } from "vitest";

const src = path.join(import.meta.dirname, "../../src");

/** Every source file by its path below src, with what it imports: a path below src, or a package's name. */
const files = readdirSync(src, { recursive: true, encoding: "utf8" })
  .map((file) => file.replaceAll(path.sep, "/"))
  .filter((file) => /\.tsx?$/.test(file))
  .map((file) => {
    const text = readFileSync(path.join(src, file), "utf8");
    const imports = ts
      .preProcessFile(text, true, true)
      .importedFiles.map(({ fileName }) =>
        fileName.startsWith(".")
          ? path.posix.normalize(path.posix.join(path.posix.dirname(file), fileName))
          : fileName,
      );
    return { file, text, imports, folder: file.split("/")[0] as string };
  });

const inFolder = (folder: string) => files.filter((one) => one.folder === folder);
const folderOf = (imported: string) => imported.split("/")[0] as string;

/** Which folders a folder may import, packages left aside. */
const ALLOWED: Readonly<Record<string, readonly string[]>> = {
  model: ["model"],
  cells: ["cells", "model"],
  library: ["library", "model"],
  functions: ["functions", "cells", "model", "library"],
  workbook: ["workbook", "help", "@zip.js", "fflate", "saxes", "wasm-xlsxwriter"],
  working: ["working", "model", "library"],
};

describe("who may import whom", () => {
  for (const [folder, allowed] of Object.entries(ALLOWED)) {
    test.each(inFolder(folder))(`$file imports ${allowed.join(", ")} only`, ({ imports }) => {
      for (const imported of imports) expect(allowed).toContain(folderOf(imported));
    });
  }

  test("cells take the one error and nothing else from the model", () => {
    const fromModel = inFolder("cells").flatMap(({ imports }) =>
      imports.filter((imported) => imported.startsWith("model/")),
    );
    expect(new Set(fromModel)).toEqual(new Set(["model/refusal"]));
  });

  test("the pane computes nothing: of the model it knows how a number is written and what a refusal is", () => {
    const folders = ["pane", "host", "help", "library", "working", "workbook", "cells", "model"];
    const fromModel = new Set<string>();
    for (const { file, imports } of inFolder("pane")) {
      for (const imported of imports.filter((one) => files.some((f) => f.file.startsWith(one)))) {
        expect(folders, `${file} imports ${imported}`).toContain(folderOf(imported));
        if (imported.startsWith("model/")) fromModel.add(imported);
        if (imported.startsWith("cells/")) {
          expect(["cells/cell", "cells/observer"], file).toContain(imported);
        }
      }
    }
    expect([...fromModel].sort()).toEqual(["model/figure", "model/refusal"]);
  });

  test("no host loads the sources of the functions: all load what was built", () => {
    for (const { file, imports, folder } of files) {
      if (folder === "functions") continue;
      expect(imports.map(folderOf), file).not.toContain("functions");
    }
  });
});

test("the model knows no clock, no chance and no host", () => {
  for (const { file, text } of inFolder("model")) {
    expect(text, file).not.toMatch(
      /Math\.random|\bDate\b|performance\.|\bOffice\b|\bExcel\b|window\.|document\./,
    );
  }
});

test("functions hold no arithmetic", () => {
  const arithmetic = new Set([
    ts.SyntaxKind.PlusToken,
    ts.SyntaxKind.MinusToken,
    ts.SyntaxKind.AsteriskToken,
    ts.SyntaxKind.SlashToken,
    ts.SyntaxKind.AsteriskAsteriskToken,
  ]);
  for (const { file, text } of inFolder("functions")) {
    const source = ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true);
    const found: string[] = [];
    const visit = (node: ts.Node): void => {
      if (ts.isBinaryExpression(node) && arithmetic.has(node.operatorToken.kind)) {
        found.push(node.getText());
      }
      ts.forEachChild(node, visit);
    };
    visit(source);
    expect(found, file).toEqual([]);
  }
});

test("only the Excel host names Excel's object model", () => {
  for (const { file, text } of files) {
    if (file === "host/excel.ts" || file.startsWith("host/excel/")) continue;
    expect(text, file).not.toMatch(
      /\bExcel\.(run|RequestContext|createWorkbook|Range|Worksheet)\b/,
    );
  }
});

test("only the engine, the workbench and its host name the grid's packages", () => {
  for (const { file, imports, folder } of files) {
    if (["engine", "workbench"].includes(folder) || file.startsWith("host/workbench")) continue;
    expect(
      imports.filter((imported) => imported.startsWith("@univerjs")),
      file,
    ).toEqual([]);
  }
});
