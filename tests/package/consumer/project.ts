import { execFileSync } from "node:child_process";
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { transformSync } from "esbuild";
import { CONSUMER_FILES } from "./files.ts";

export const ROOT = new URL("../../..", import.meta.url).pathname;

/** The bundled record of temperatures that every consumer reads. */
export const TEMPERATURES = join(ROOT, "fixtures/temperatures/new-york-2012-2015.csv");

interface Packed {
  readonly filename: string;
  readonly files: readonly { readonly path: string }[];
}

/** A project that has the package installed. */
export interface Project {
  readonly folder: string;
  /** Paths in the tarball. */
  readonly files: readonly string[];
  readonly remove: () => void;
}

/**
 * Packs `dist` as it would be published and lays it into a fresh project. The network is not asked: the
 * tarball is unpacked into node_modules, and its declared dependencies, no others, are linked from here, so
 * that an undeclared one is not found.
 */
export function freshProject(): Project {
  const folder = mkdtempSync(join(tmpdir(), "moltline-consumer-"));
  const told = execFileSync("npm", ["pack", "--json", "--ignore-scripts", "--pack-destination", folder], {
    cwd: ROOT,
    encoding: "utf8",
  });
  const [packed]: readonly Packed[] = JSON.parse(told);
  if (packed === undefined) throw new Error("npm pack told of no tarball");
  const installed = join(folder, "node_modules/moltline");
  mkdirSync(installed, { recursive: true });
  execFileSync("tar", ["-xzf", join(folder, packed.filename), "-C", installed, "--strip-components=1"]);
  const { dependencies }: { readonly dependencies: Readonly<Record<string, string>> } = JSON.parse(
    readFileSync(join(installed, "package.json"), "utf8"),
  );
  for (const name of Object.keys(dependencies)) {
    const link = join(folder, "node_modules", name);
    mkdirSync(dirname(link), { recursive: true });
    symlinkSync(join(ROOT, "node_modules", name), link);
  }
  for (const [path, text] of Object.entries(CONSUMER_FILES)) writeFileSync(join(folder, path), text);
  const source = readFileSync(new URL("answer.ts", import.meta.url), "utf8");
  writeFileSync(join(folder, "answer.js"), transformSync(source, { loader: "ts" }).code);
  mkdirSync(join(folder, "public"));
  cpSync(TEMPERATURES, join(folder, "public/temperatures.csv"));
  return {
    folder,
    files: packed.files.map(({ path }) => path),
    remove: () => rmSync(folder, { recursive: true }),
  };
}
