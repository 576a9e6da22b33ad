import { type Context, Script, createContext, runInContext } from "node:vm";

/** An expression of an example, what the example says it gives, and what it gave. */
export interface Shown {
  readonly code: string;
  readonly says: unknown;
  readonly gave: unknown;
}

/** The code of every `@example` in the comments of a source. */
export function examplesOf(source: string): string[] {
  return [...source.matchAll(/\/\*\*[\s\S]*?\*\//g)].flatMap(([comment]) => {
    const text = comment
      .replace(/^\/\*\*|\*\/$/g, "")
      .split("\n")
      .map((line) => line.replace(/^\s*\* ?/, ""))
      .join("\n");
    return [...text.matchAll(/^@example\s*\n([\s\S]*?)(?=^@\w|(?![\s\S]))/gm)].map((match) => match[1] ?? "");
  });
}

/** The `ts` blocks of a page of Markdown that show a value. */
export function blocksOf(markdown: string): string[] {
  return [...markdown.matchAll(/^```ts\n([\s\S]*?)^```/gm)]
    .map((match) => match[1] ?? "")
    .filter((code) => code.includes("// →"));
}

/**
 * Runs an example: the code before each `// →` must give the value after it. What one part declares the
 * next can use. A value that is not yet whole goes on in the comment lines below it.
 * @param scope Names that the code can use; its own import lines are checked against them.
 */
export function shownBy(code: string, scope: Readonly<Record<string, unknown>>): Shown[] {
  const context = createContext({ ...OWN_GLOBALS, ...scope });
  const shown: Shown[] = [];
  let part: string[] = [];
  const lines = withoutImports(code, scope).split("\n");
  for (let i = 0; i < lines.length; i++) {
    const [before = "", value] = (lines[i] ?? "").split("// →");
    part.push(before);
    if (value === undefined) continue;
    let whole = value;
    while (!isWhole(whole) && /^\s*\/\//.test(lines[i + 1] ?? ""))
      whole += (lines[++i] ?? "").replace(/^\s*\/\//, "");
    const text = part.join("\n").trim();
    shown.push({ code: text, gave: valueOf(text, context), says: valueOf(`(${whole.trim()})`, context) });
    part = [];
  }
  return shown;
}

// Typed arrays and dates of a context of its own would not be instances of ours.
const OWN_GLOBALS = { Array, Object, Date, Map, Set, Uint8Array, Float64Array, TextEncoder };

function isWhole(value: string): boolean {
  try {
    return new Script(`(${value})`) instanceof Script;
  } catch {
    return false;
  }
}

function valueOf(code: string, context: Context): unknown {
  const value: unknown = runInContext(code, context);
  return value;
}

/** Code without its import lines, each name of which must be in scope. */
function withoutImports(code: string, scope: Readonly<Record<string, unknown>>): string {
  return code.replace(/^import\s+\{([^}]*)\}\s+from\s+"[^"]+";?\s*$/gm, (_, names: string) => {
    for (const name of names
      .split(",")
      .map((one) => one.trim())
      .filter((one) => one !== "" && !one.startsWith("type "))) {
      if (!Object.hasOwn(scope, name)) throw new Error(`the example imports ${name}, which no entry exports`);
    }
    return "";
  });
}
