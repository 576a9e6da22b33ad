import { readFileSync, readdirSync } from "node:fs";
import { join } from "node:path";
import ts from "typescript";

const ROOT = new URL("../..", import.meta.url).pathname;

const HEAD =
  "Made by npm run report:api: what the package exports, and its types. Not to be changed by hand.";

/**
 * The lists of exports by file name in docs/api: one paragraph a name, in the order of the alphabet, from the
 * declarations in `dist`, as a user's compiler sees them.
 */
export function exportLists(): Readonly<Record<string, string>> {
  const entries = entryFiles();
  const options = {
    module: ts.ModuleKind.NodeNext,
    target: ts.ScriptTarget.ES2022,
    lib: ["lib.es2023.d.ts", "lib.dom.d.ts"],
    strict: true,
    skipLibCheck: true,
    types: [],
  };
  const program = ts.createProgram([...entries.values()], options);
  const textsOf = (path: string): string[] =>
    exportsOf(program, path).map((symbol) => textOf(symbol, program.getTypeChecker()));
  const lists = new Map<string, string[]>();
  for (const [entry, path] of entries) {
    const [, folder, name] = entry.split("/");
    // Each species is an entry of its own; one list of a line each shows them better.
    if (name === undefined)
      lists.set(entry.replace("/", "-"), [`import … from "${entry}"`, ...textsOf(path)]);
    else
      lists.set(`moltline-${folder}`, [
        ...(lists.get(`moltline-${folder}`) ?? []),
        `${entry}  ${textsOf(path).join(" ")}`,
      ]);
  }
  return Object.fromEntries(
    [...lists].map(([name, texts]) => [`${name}.txt`, `${[HEAD, ...texts].join("\n\n")}\n`]),
  );
}

/** Declaration files by what is imported. */
function entryFiles(): Map<string, string> {
  const {
    exports,
  }: { readonly exports: Readonly<Record<string, { readonly types?: string } | string | null>> } = JSON.parse(
    readFileSync(join(ROOT, "package.json"), "utf8"),
  );
  const files = new Map<string, string>();
  for (const [key, target] of Object.entries(exports)) {
    if (target === null || typeof target === "string" || target.types === undefined) continue;
    const path = join(ROOT, target.types);
    if (!key.endsWith("/*")) {
      files.set(`moltline${key.slice(1)}`, path);
      continue;
    }
    for (const file of readdirSync(join(path, "..")).sort()) {
      const name = /^(.+)\.d\.ts$/.exec(file)?.[1];
      const one = key.replace("*", name ?? "*");
      if (name !== undefined && exports[one] !== null)
        files.set(`moltline${one.slice(1)}`, join(path, "..", file));
    }
  }
  return files;
}

function exportsOf(program: ts.Program, path: string): ts.Symbol[] {
  const checker = program.getTypeChecker();
  const file = program.getSourceFile(path);
  const module = file && checker.getSymbolAtLocation(file);
  if (module === undefined) throw new Error(`${path} is not there; npm run build makes it`);
  return checker
    .getExportsOfModule(module)
    .map((symbol) => (symbol.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(symbol) : symbol))
    .sort((a, b) => (a.name < b.name ? -1 : 1));
}

const PRINTER = ts.createPrinter({ removeComments: true });

/** A name as its declaration has it, without comments. */
function textOf(symbol: ts.Symbol, checker: ts.TypeChecker): string {
  const texts = (symbol.declarations ?? []).map((declaration) => {
    const whole = ts.isVariableDeclaration(declaration) ? declaration.parent.parent : declaration;
    const text = PRINTER.printNode(ts.EmitHint.Unspecified, whole, declaration.getSourceFile());
    return text.replace(/^(?:export )?(?:declare )?/, "");
  });
  if (texts.length === 0) throw new Error(`${symbol.name} has no declaration`);
  if (!texts.some((text) => /\bz\./.test(text))) return texts.join("\n");
  // A type made from a schema names the schema; what it comes to is what its users see.
  const flags = ts.TypeFormatFlags.NoTruncation | ts.TypeFormatFlags.InTypeAlias;
  // eslint-disable-next-line @typescript-eslint/no-unsafe-enum-assignment -- flags are made to be joined
  const text = checker.typeToString(checker.getDeclaredTypeOfSymbol(symbol), undefined, flags);
  return `type ${symbol.name} = ${inOrder(text)};`;
}

// The compiler gives the members of a union in the order in which it met them, which other files can change.
function inOrder(type: string): string {
  return type.replace(/"[^"]*"(?: \| "[^"]*")+/g, (union) => union.split(" | ").sort().join(" | "));
}
