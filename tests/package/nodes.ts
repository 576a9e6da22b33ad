// The packed package under the oldest Node that it promises to run on and the newest there is: a project that
// uses it, a thread, and the command line. The binaries come from the registry's package `node`.
import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { inProcess } from "./consumer/in-process.ts";
import { ROOT, TEMPERATURES, freshProject } from "./consumer/project.ts";

const { engines }: { readonly engines: { readonly node: string } } = JSON.parse(
  readFileSync(join(ROOT, "package.json"), "utf8"),
);
const oldest = `${engines.node.replace(">=", "")}.0`;
const project = freshProject();
const expected = inProcess();
const found = ["--species", "danaus-plexippus", "--found", "egg", "--on", "2015-06-08", "--count", "12"];
const command = [
  ...[join(project.folder, "node_modules/moltline/dist/cli/main.js"), "forecast"],
  ...["--temperatures", TEMPERATURES, "--unit", "C", "--zone", "America/New_York", ...found],
];
const printed = execFileSync(process.execPath, command, { encoding: "utf8" });
const runs = [
  { what: "a project", words: ["node-main.js"], text: expected },
  { what: "a thread", words: ["node-threads.js"], text: expected },
  { what: "the command line", words: command, text: printed },
];

try {
  for (const version of [oldest, "latest"]) {
    const folder = mkdtempSync(join(tmpdir(), "moltline-node-"));
    try {
      writeFileSync(join(folder, "package.json"), '{ "private": true }');
      const quiet = ["--no-audit", "--no-fund", "--silent"];
      execFileSync("npm", ["install", ...quiet, `node@${version}`], { cwd: folder, stdio: "inherit" });
      const node = join(folder, "node_modules/node/bin/node");
      const found = execFileSync(node, ["--version"], { encoding: "utf8" }).trim();
      for (const { what, words, text } of runs) {
        const told = execFileSync(node, words, { cwd: project.folder, encoding: "utf8", maxBuffer: 2 ** 26 });
        if (told !== text) throw new Error(`under Node ${found}, ${what} gives another result`);
      }
      console.log(`Node ${found}: ${runs.map(({ what }) => what).join(", ")}: the same to the byte`);
    } finally {
      rmSync(folder, { recursive: true });
    }
  }
} finally {
  project.remove();
}
