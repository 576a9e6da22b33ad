import { mkdir, readdir, stat, writeFile } from "node:fs/promises";
import { basename, join } from "node:path";
import { fileURLToPath } from "node:url";
import { observable } from "@observablehq/notebook-kit/vite";
import { build } from "vite";
import { viteSingleFile } from "vite-plugin-singlefile";
import { indexPage } from "./index-page.ts";
import { lessonsOf } from "./lessons.ts";
import { offlineImports } from "./offline-imports.ts";
import { ownPage } from "./own-page.ts";

const NOTEBOOKS = fileURLToPath(new URL("..", import.meta.url));

/** Where built pages go; not kept under version control. */
export const BUILT = join(NOTEBOOKS, "built");

/** One built page. */
export interface BuiltNotebook {
  /** File name without its ending. */
  readonly name: string;
  /** Path of the page. */
  readonly file: string;
  readonly bytes: number;
}

/**
 * Builds every `notebooks/*.html` into one self-contained page under `notebooks/built/`: script, styles and
 * data inside, nothing asked for at run time, so that it opens from disk without a network. An index of all goes
 * beside them.
 * @param only Names of the notebooks to build, without their ending. Default: all.
 */
export async function buildNotebooks(only?: readonly string[]): Promise<BuiltNotebook[]> {
  const sources = (await readdir(NOTEBOOKS)).filter((name) => name.endsWith(".html")).sort();
  const lessons = await lessonsOf(sources.map((source) => join(NOTEBOOKS, source)));
  const pages: BuiltNotebook[] = [];
  for (const source of sources) {
    const name = basename(source, ".html");
    if (only !== undefined && !only.includes(name)) continue;
    // One build a page, because only a build with a single input may put everything into one chunk.
    await build({
      configFile: false,
      root: NOTEBOOKS,
      logLevel: "warn",
      plugins: [
        offlineImports(),
        observable({ template: join(NOTEBOOKS, "page", "template.html") }),
        ownPage(name, lessons),
        viteSingleFile(),
      ],
      build: {
        outDir: BUILT,
        emptyOutDir: false,
        target: "es2022",
        modulePreload: false,
        rolldownOptions: { input: join(NOTEBOOKS, source) },
      },
    });
    const file = join(BUILT, source);
    pages.push({ name, file, bytes: (await stat(file)).size });
  }
  const file = join(BUILT, "index.html");
  await mkdir(BUILT, { recursive: true });
  await writeFile(file, await indexPage(lessons, join(NOTEBOOKS, "page")));
  pages.push({ name: "index", file, bytes: (await stat(file)).size });
  return pages;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const asked = process.argv.slice(2);
  const started = performance.now();
  for (const { name, bytes } of await buildNotebooks(asked.length > 0 ? asked : undefined)) {
    console.log(`notebooks/built/${name}.html  ${(bytes / 1000).toFixed(0)} kB`);
  }
  console.log(`built in ${((performance.now() - started) / 1000).toFixed(1)} s`);
}
