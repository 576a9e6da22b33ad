import { cpSync } from "node:fs";
import { join } from "node:path";
import { build } from "vite";

const ROOT = new URL("../..", import.meta.url).pathname;

/**
 * Builds the command line, and the function that changes files, into a folder as plain JavaScript, so that many
 * processes can start at once without compiling it each.
 */
export async function builtProgram(
  folder: string,
): Promise<{ readonly main: string; readonly updateFile: string }> {
  await build({
    root: ROOT,
    configFile: false,
    logLevel: "silent",
    ssr: { noExternal: true },
    build: {
      ssr: true,
      outDir: folder,
      emptyOutDir: false,
      minify: false,
      rolldownOptions: {
        input: {
          main: join(ROOT, "src/cli/main.ts"),
          "update-file": join(ROOT, "src/cli/files/update-file.ts"),
        },
        output: { format: "es", entryFileNames: "[name].mjs", chunkFileNames: "[name].mjs" },
      },
    },
  });
  // Type of the folder's own modules, whatever lies above it.
  cpSync(join(ROOT, "package.json"), join(folder, "package.json"));
  return { main: join(folder, "main.mjs"), updateFile: join(folder, "update-file.mjs") };
}
