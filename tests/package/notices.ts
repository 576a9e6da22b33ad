import { readFileSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { build } from "esbuild";
import { ROOT } from "./consumer/project.ts";

const HEAD = `Made by npm run report:notices. The command line is one bundle that contains the following packages; the
library itself contains none and names those that it needs as dependencies.`;

/** The licences of the packages that are bundled into the command line, as docs/third-party.txt has them. */
export async function thirdPartyNotices(): Promise<string> {
  const { metafile } = await build({
    entryPoints: [join(ROOT, "src/cli/main.ts")],
    absWorkingDir: ROOT,
    bundle: true,
    format: "esm",
    platform: "node",
    mainFields: ["browser", "module", "main"],
    outdir: "dist/cli",
    splitting: true,
    write: false,
    metafile: true,
    logLevel: "error",
  });
  const names = Object.keys(metafile.inputs).flatMap(
    (path) => /node_modules\/((?:@[^/]+\/)?[^/]+)/.exec(path)?.[1] ?? [],
  );
  const texts = [...new Set(names)].sort().map((name) => {
    const folder = join(ROOT, "node_modules", name);
    const { license }: { readonly license?: string } = JSON.parse(
      readFileSync(join(folder, "package.json"), "utf8"),
    );
    const file = readdirSync(folder).find((entry) => /^licen[cs]e/i.test(entry));
    const text = file !== undefined ? readFileSync(join(folder, file), "utf8") : "";
    return `${name}${license === undefined ? "" : ` (${license})`}\n\n${text.trim()}`;
  });
  return `${[HEAD, ...texts].join(`\n\n${"-".repeat(80)}\n\n`)}\n`;
}
