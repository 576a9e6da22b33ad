// @vitest-environment jsdom
import { readFileSync, readdirSync } from "node:fs";
import { join, resolve } from "node:path";
import { deserialize } from "@observablehq/notebook-kit";
import ts from "typescript";
import { describe, expect, test } from "vitest";

const ROOT = resolve(import.meta.dirname, "../..");
const NOTEBOOKS = join(ROOT, "notebooks");
const names = readdirSync(NOTEBOOKS).filter((name) => name.endsWith(".html"));

/** What a cell may name without importing it. */
const AMBIENT = `
import type * as PlotLibrary from "@observablehq/plot";
declare const Plot: typeof PlotLibrary;
declare const Inputs: typeof import("./page/inputs.ts");
declare const width: number;
declare function display<Value>(value: Value): Value;
declare function view<Value>(form: { readonly value: Value }): Value;
declare function FileAttachment(name: string): Pick<Blob, "arrayBuffer" | "text">;
`;

// Cells stand in the order of reading and run in the order of need, so a name may be used above its cell.
const USED_BEFORE_DECLARED = new Set([2448, 2454]);

interface Cell {
  readonly mode: string;
  readonly value: string;
}

function cellsOf(name: string): readonly Cell[] {
  return deserialize(readFileSync(join(NOTEBOOKS, name), "utf8"), { parser: new DOMParser() }).cells;
}

/** Complaints of the TypeScript compiler about all cells of a notebook, taken as one module. */
function complaints(source: string): string[] {
  const configFile = join(ROOT, "tsconfig.json");
  const read: { config?: unknown } = ts.readConfigFile(configFile, (path) => ts.sys.readFile(path));
  const { options } = ts.parseJsonConfigFileContent(read.config, ts.sys, ROOT);
  const path = join(NOTEBOOKS, "all-cells.ts");
  const host = ts.createCompilerHost(options);
  const fromDisk = host.getSourceFile.bind(host);
  host.fileExists = (file) => file === path || ts.sys.fileExists(file);
  host.readFile = (file) => (file === path ? source : ts.sys.readFile(file));
  host.getSourceFile = (file, language) =>
    file === path ? ts.createSourceFile(file, source, language) : fromDisk(file, language);
  const program = ts.createProgram([path, join(NOTEBOOKS, "page", "untyped.d.ts")], options, host);
  const cells = program.getSourceFile(path);
  return [...program.getSyntacticDiagnostics(cells), ...program.getSemanticDiagnostics(cells)]
    .filter(({ code }) => !USED_BEFORE_DECLARED.has(code))
    .map(({ messageText, start = 0 }) => {
      const line = source.slice(0, start).split("\n").length;
      return `${ts.flattenDiagnosticMessageText(messageText, " ")} (${source.split("\n")[line - 1]?.trim()})`;
    });
}

describe.each(names)("notebooks/%s", (name) => {
  test("has cells that the compiler accepts", { timeout: 60_000 }, () => {
    const code = cellsOf(name)
      .filter(({ mode }) => mode === "ts")
      .map(({ value }) => value);
    expect(code.length).toBeGreaterThan(0);
    expect(complaints([AMBIENT, ...code].join("\n"))).toEqual([]);
  });

  test("says what is invented before anything else", () => {
    expect(cellsOf(name)[0]?.value.slice(0, 400)).toMatch(/invented/);
  });
});
