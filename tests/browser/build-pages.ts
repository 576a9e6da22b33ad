import { execFileSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import { browserAtHand } from "./chromium.ts";

/** Builds the notebooks once, before the first file that opens them. */
export function setup(): void {
  if (!browserAtHand()) return;
  const root = fileURLToPath(new URL("../..", import.meta.url));
  // A process of its own: where this runs, the notebook kit cannot find its own modules.
  execFileSync("npm", ["run", "--silent", "notebooks"], { cwd: root, stdio: "inherit" });
}
