import { execFileSync } from "node:child_process";
import { readFileSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { build } from "vite";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { launch } from "../browser/browser.ts";
import { browserAtHand } from "../browser/chromium.ts";
import { inProcess } from "./consumer/in-process.ts";
import { type Project, ROOT, TEMPERATURES, freshProject } from "./consumer/project.ts";
import { serve } from "./consumer/static-server.ts";

// The tarball in projects of their own. Each makes the forecast that the sources make, to the byte.
let project: Project;
beforeAll(() => {
  project = freshProject();
});
afterAll(() => project.remove());

const node = (...words: readonly string[]): string => nodeAt(undefined, ...words);
const nodeAt = (TZ: string | undefined, ...words: readonly string[]): string =>
  execFileSync(process.execPath, words, {
    cwd: project.folder,
    encoding: "utf8",
    maxBuffer: 2 ** 26,
    env: { ...process.env, ...(TZ !== undefined && { TZ }) },
  });

describe("the tarball", () => {
  it("has the library, the command line, the documents and nothing of the tests", () => {
    for (const path of ["dist/index.js", "dist/index.d.ts", "dist/cli/main.js", "README.md", "LICENSE"]) {
      expect(project.files).toContain(path);
    }
    const folders = new Set(project.files.map((path) => path.split("/")[0]));
    expect([...folders].sort()).toEqual(["LICENSE", "README.md", "dist", "docs", "package.json"]);
  });
});

describe("the same forecast, to the byte", () => {
  it.each(["UTC", "Pacific/Apia", "America/St_Johns"])("by Node whose own zone is %s", (zone) => {
    expect(nodeAt(zone, "node-main.js")).toBe(inProcess());
  });

  it("by a thread of Node", () => {
    expect(node("node-threads.js")).toBe(inProcess());
  });

  it("by the command line", () => {
    const words = ["--temperatures", TEMPERATURES, "--unit", "C", "--zone", "America/New_York", "--json"];
    const found = ["--species", "danaus-plexippus", "--found", "egg", "--on", "2015-06-08", "--count", "12"];
    const { stages } = JSON.parse(
      node("node_modules/moltline/dist/cli/main.js", "forecast", ...words, ...found),
    );
    expect(stages).toEqual(JSON.parse(inProcess().split("\n")[0] ?? "").stages);
  });

  it.runIf(browserAtHand())(
    "by a page built with Vite and by its worker, asking nothing outside",
    async () => {
      const outDir = join(project.folder, "built");
      await build({
        root: project.folder,
        configFile: false,
        logLevel: "error",
        base: "./",
        build: { outDir, target: "es2022" },
        worker: { format: "es" },
      });
      const { origin, close } = await serve(outDir);
      const browser = await launch();
      try {
        const context = await browser.newContext({ locale: "de-DE", timezoneId: "Pacific/Apia" });
        const [outside, complaints]: [string[], string[]] = [[], []];
        await context.route(
          (url) => url.origin !== origin && !["data:", "blob:"].includes(url.protocol),
          async (route) => {
            outside.push(route.request().url());
            await route.abort();
          },
        );
        const page = await context.newPage();
        page.on("console", (message) => complaints.push(message.text()));
        page.on("pageerror", (error) => complaints.push(error.message));
        await page.goto(`${origin}/`);
        await page.waitForFunction("window.fromPage && window.fromWorker");
        expect(await page.evaluate("window.fromPage")).toBe(inProcess());
        expect(await page.evaluate("window.fromWorker")).toBe(inProcess());
        expect([outside, complaints]).toEqual([[], []]);
      } finally {
        await browser.close();
        close();
      }
    },
  );
});

describe("moltline/schemas/…", () => {
  it("offers each JSON Schema as data", () => {
    const names = readdirSync(join(ROOT, "docs/schemas"));
    const told = node(
      "--no-warnings",
      "--input-type=module",
      "-e",
      `${names.map((name, i) => `import schema${i} from "moltline/schemas/${name}" with { type: "json" };`).join("\n")}
       console.log(JSON.stringify([${names.map((_, i) => `schema${i}`).join()}]));`,
    );
    expect(names).toContain("forecast.json");
    expect(JSON.parse(told)).toEqual(
      names.map((name) => JSON.parse(readFileSync(join(ROOT, "docs/schemas", name), "utf8"))),
    );
  });
});

describe("moltline/species/…", () => {
  const files = readdirSync(join(ROOT, "src/species")).map((file) => file.replace(/\.ts$/, ""));
  const isSpecies = (name: string): boolean =>
    /: LifeCycle = /.test(readFileSync(join(ROOT, "src/species", `${name}.ts`), "utf8"));

  it("offers each species alone, and no other file of their folder", () => {
    const told = node(
      "--input-type=module",
      "-e",
      `const found = {};
       for (const name of ${JSON.stringify(files)}) {
         found[name] = await import("moltline/species/" + name).then(
           (all) => Object.values(all).map(({ species }) => species),
           ({ code }) => code,
         );
       }
       console.log(JSON.stringify(found));`,
    );
    expect(files.filter(isSpecies).length).toBeGreaterThan(10);
    expect(JSON.parse(told)).toEqual(
      Object.fromEntries(
        files.map((name) => [name, isSpecies(name) ? [name] : "ERR_PACKAGE_PATH_NOT_EXPORTED"]),
      ),
    );
  });
});
