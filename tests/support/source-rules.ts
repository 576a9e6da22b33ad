import { posix } from "node:path";

// Rules of the source tree as functions of its texts, so that they can be shown to catch a planted fault.
// Regular expressions do: imports stand at the begin of a line and comments are taken out first.

/** Texts by path below src, such as `time/zone.ts`. */
export type Sources = ReadonlyMap<string, string>;

/** Folders in the order of the sentence that they tell; a file imports only from those before its own. */
export const LAYERS = [
  "foundation",
  "numeric",
  "time",
  "temperature",
  "diurnal",
  "response",
  "clock",
  "species",
  "cohort",
  "forecast",
  "evaluate",
  "rearing",
  "sql",
  "edge",
  "cli",
] as const;

const FOUNDATION = ["errors.ts", "given.ts", "notes.ts", "plain-words.ts", "units.ts"];
const EDGES = ["read", "write", "plot"];

/** The first part of a path: its folder, or the file itself where it lies directly in src. */
function folderOf(path: string): string {
  return path.split("/")[0] ?? path;
}

function layerOf(path: string): number {
  const folder = folderOf(path);
  if (FOUNDATION.includes(folder)) return LAYERS.indexOf("foundation");
  if (EDGES.includes(folder)) return LAYERS.indexOf("edge");
  return LAYERS.findIndex((layer) => layer === folder);
}

/** Whether a path belongs to the core: everything but reading, writing, drawing and the command line. */
export function isCore(path: string): boolean {
  return ![...EDGES, "cli"].includes(folderOf(path));
}

/** Source without comments; what stands in strings and templates stays. */
export function withoutComments(text: string): string {
  return text.replace(
    /"(?:\\.|[^"\\\n])*"|'(?:\\.|[^'\\\n])*'|`(?:\\.|[^`\\])*`|\/\*[\s\S]*?\*\/|(?<![:\\])\/\/[^\n]*/g,
    (match) => (match.startsWith("/") ? match.replace(/[^\n]/g, " ") : match),
  );
}

/** What a file imports or exports from, types included. */
export function importsOf(text: string): string[] {
  const code = withoutComments(text);
  const patterns = [
    /^\s*(?:import|export)\b[^"';]*?\bfrom\s*["']([^"']+)["']/gm,
    /^\s*import\s*["']([^"']+)["']/gm,
    /\bimport\s*\(\s*["']([^"']+)["']\s*\)/g,
  ];
  return patterns.flatMap((pattern) => [...code.matchAll(pattern)].map((match) => match[1] ?? ""));
}

/** Imports of files of the tree itself, as paths below src. */
export function ownImportsOf(path: string, text: string): string[] {
  return importsOf(text)
    .filter((specifier) => specifier.startsWith("."))
    .map((specifier) => posix.normalize(posix.join(posix.dirname(path), specifier)));
}

/** Imports that run from left to right, or into a neighbouring edge, or to a file that is not there. */
export function wrongDirections(sources: Sources): string[] {
  return [...sources].flatMap(([path, text]) =>
    ownImportsOf(path, text).flatMap((target) => {
      if (!sources.has(target)) return [`${path} imports ${target}, which is not there`];
      if (path === "index.ts") return isCore(target) ? [] : [`${path} imports ${target} outside the core`];
      const [from, to] = [layerOf(path), layerOf(target)];
      if (from < 0) return [`${path} lies in a folder without a place in the order`];
      const own = folderOf(path) === folderOf(target);
      const grounded = FOUNDATION.includes(path) && FOUNDATION.includes(target);
      return own || grounded || (to >= 0 && to < from) ? [] : [`${path} imports ${target}`];
    }),
  );
}

/** Packages that the core may import. */
const CORE_PACKAGES = ["d3-array"];

/** Packages that a single file of the core may import. */
const ONE_FILE_PACKAGES: Readonly<Record<string, string>> = {
  suncalc: "diurnal/sun.ts",
  "ml-levenberg-marquardt": "evaluate/rate-fit/fit-rate-model.ts",
};

const AMBIENT: readonly (readonly [RegExp, string])[] = [
  [/\bDate\s*\.\s*now\b/, "Date.now"],
  [/\bnew\s+Date\s*(?:\(\s*\)|(?!\s*\())/, "new Date() of the moment"],
  [/(?<!new\s)(?<![.\w])Date\s*\(\s*\)/, "Date() of the moment"],
  [/\bMath\s*\.\s*random\b/, "Math.random"],
  [/\bperformance\s*\.\s*now\b/, "performance.now"],
  [/(?<![.\w"'-])process\s*[.[]/, "process"],
  [/\b(?:local|session)Storage\b/, "storage of a browser"],
  [/\btoLocale\w*/, "toLocale*"],
  [/\bIntl\s*\.\s*DateTimeFormat\s*\(\s*\)/, "the zone of the machine"],
  [/\bconsole\s*\./, "console"],
  [/(?<![.\w])(?:fetch|require)\s*\(/, "fetch or require"],
];

/** What of the world around it a core file reaches for. */
export function impurities(sources: Sources): string[] {
  return [...sources].flatMap(([path, text]) => {
    if (!isCore(path)) return [];
    const code = withoutComments(text);
    const packages = importsOf(text).filter(
      (one) => !one.startsWith(".") && !CORE_PACKAGES.includes(one) && ONE_FILE_PACKAGES[one] !== path,
    );
    return [
      ...packages.map((one) => `${path} imports ${one}`),
      ...AMBIENT.filter(([pattern]) => pattern.test(code)).map(([, what]) => `${path} uses ${what}`),
    ];
  });
}

/** Files with more lines than a file should have. */
export function longFiles(sources: Sources, most = 200): string[] {
  return [...sources].filter(([, text]) => text.trimEnd().split("\n").length > most).map(([path]) => path);
}

/** Files that no entry leads to. */
export function unreachable(sources: Sources, entries: readonly string[]): string[] {
  const reached = new Set<string>();
  const waiting = [...entries];
  for (let path = waiting.pop(); path !== undefined; path = waiting.pop()) {
    const text = sources.get(path);
    if (text === undefined || reached.has(path)) continue;
    reached.add(path);
    waiting.push(...ownImportsOf(path, text));
  }
  return [...sources.keys()].filter((path) => !reached.has(path));
}

/** Imports that lead back to where they came from, each as the files on the way. */
export function cycles(sources: Sources): string[] {
  const done = new Set<string>();
  const found: string[] = [];
  const visit = (path: string, way: readonly string[]): void => {
    const since = way.indexOf(path);
    if (since >= 0) {
      found.push([...way.slice(since), path].join(" > "));
      return;
    }
    if (done.has(path)) return;
    for (const target of ownImportsOf(path, sources.get(path) ?? "")) visit(target, [...way, path]);
    done.add(path);
  };
  for (const path of sources.keys()) visit(path, []);
  return found;
}
