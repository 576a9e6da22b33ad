import { fileURLToPath } from "node:url";
import type { Plugin } from "vite";

const PAGE = (name: string): string => fileURLToPath(new URL(`../page/${name}`, import.meta.url));
const KIT_RUNTIME = fileURLToPath(import.meta.resolve("@observablehq/notebook-kit/runtime"));
const KIT_MARKDOWN = fileURLToPath(
  new URL("stdlib/md.js", import.meta.resolve("@observablehq/notebook-kit/runtime")),
);

/**
 * Modules of the notebook runtime that would fetch libraries or styles over the network, and what stands in
 * for them. The rest of the runtime is used as it is.
 */
const STAND_INS: Readonly<Record<string, string>> = {
  // Loads some twenty libraries from a content network; the notebooks use the few in libraries.ts.
  "./recommendedLibraries.js": PAGE("libraries.ts"),
  // Sample data over the network.
  "./sampleDatasets.js": PAGE("nothing.ts"),
  // File kinds that no notebook reads, whose readers come over the network.
  "./zip.js": PAGE("nothing.ts"),
  "./xlsx.js": PAGE("nothing.ts"),
  // Colours code at run time; ours is coloured when the page is built.
  "./highlight.js": PAGE("no-highlight.ts"),
};

/**
 * Keeps every import of a notebook inside the page: the runtime's own modules come from node_modules, and
 * an import of an address that slipped through becomes an empty module instead of a request.
 */
export function offlineImports(): Plugin {
  return {
    name: "moltline:offline-imports",
    enforce: "pre",
    resolveId(source, importer) {
      if (source === "observable:runtime") return KIT_RUNTIME;
      if (source === "virtual:markdown") return KIT_MARKDOWN;
      if (/^https?:/.test(source)) return PAGE("nothing.ts");
      const fromKit = importer?.includes("/notebook-kit/dist/src/runtime/") ?? false;
      return fromKit ? (STAND_INS[source] ?? null) : null;
    },
  };
}
