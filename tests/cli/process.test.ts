import { spawn } from "node:child_process";
import { mkdtempSync, rmSync, truncateSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";

const ROOT = new URL("../..", import.meta.url).pathname;
const MAIN = join(ROOT, "src/cli/main.ts");
const NEW_YORK = join(ROOT, "fixtures/temperatures/new-york-2012-2015.csv");
const FOUND = ["--species", "danaus-plexippus", "--found", "egg", "--on", "2015-06-08", "--unit", "C"];

interface Outcome {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** Runs the command line as a process of its own, with text on its standard input. */
function moltline(
  words: readonly string[],
  input = "",
  nodeOptions: readonly string[] = [],
): Promise<Outcome> {
  return ended(
    spawn(process.execPath, [...nodeOptions, "--import", "tsx", MAIN, ...words], { cwd: ROOT }),
    input,
  );
}

function ended(child: ReturnType<typeof spawn>, input: string): Promise<Outcome> {
  return new Promise((resolve, reject) => {
    let [out, err] = ["", ""];
    child.stdout?.on("data", (chunk: Buffer) => (out += chunk.toString()));
    child.stderr?.on("data", (chunk: Buffer) => (err += chunk.toString()));
    child.on("error", reject);
    child.on("close", (code) => resolve({ code, out, err }));
    // A program that refuses early closes its input before all of it is written.
    child.stdin?.on("error", () => undefined);
    child.stdin?.end(input);
  });
}

describe("moltline as a process", { timeout: 60_000 }, () => {
  let folder = "";
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), "moltline-"));
  });
  afterAll(() => rmSync(folder, { recursive: true }));

  const refusal = async (words: readonly string[], nodeOptions: readonly string[] = []): Promise<string> => {
    const { code, out, err } = await moltline(words, "", nodeOptions);
    expect([code, out]).toEqual([2, ""]);
    expect(err).toMatch(/^moltline: [^\n]+\n$/);
    return err;
  };

  it("forecasts from a file: JSON alone on standard output, exit status 0", async () => {
    const { code, out, err } = await moltline(["forecast", "--temperatures", NEW_YORK, ...FOUND, "--json"]);
    expect([code, err]).toEqual([0, ""]);
    const result = JSON.parse(out);
    expect(result.species).toBe("danaus-plexippus");
    expect(result.stages).toHaveLength(8);
    for (const { stage, begins } of result.stages) {
      expect(stage).toEqual(expect.any(String));
      expect(Object.keys(begins)).toEqual(["early", "expected", "late"]);
      expect(begins.early <= begins.expected && begins.expected <= begins.late).toBe(true);
    }
    expect(Array.isArray(result.notes)).toBe(true);
    for (const note of result.notes) expect(Object.keys(note)).toEqual(["code", "message"]);
  });

  it("reads standard input for - and when nothing is named", async () => {
    const csv = "date,min,max\n2015-06-08,15,27\n2015-06-09,15,27\n2015-06-10,15,27\n";
    const [dash, implied] = await Promise.all([
      moltline(["forecast", "--temperatures", "-", ...FOUND], csv),
      moltline(["forecast", ...FOUND], csv),
    ]);
    expect(dash.out).toContain("1 egg found on Mon 8 Jun 2015");
    expect(implied).toEqual(dash);
    expect(dash.code).toBe(0);
  });

  it("ends quietly when its reader stops early, as head does", async () => {
    const command = `"${process.execPath}" --import tsx "${MAIN}" degree-days --temperatures "${NEW_YORK}" --unit C --lower 10 --json | head -1`;
    const { code, out, err } = await ended(
      spawn("bash", ["-o", "pipefail", "-c", command], { cwd: ROOT }),
      "",
    );
    expect(err).toBe("");
    expect(out).toBe("{\n");
    expect(code).toBe(0);
  });

  it("refuses 200 MB with its limit, in little memory", async () => {
    const big = join(folder, "big.csv");
    writeFileSync(big, "");
    truncateSync(big, 200_000_000);
    // Were the whole file held, a heap and buffers of this size would not do.
    const message = await refusal(["forecast", "--temperatures", big, ...FOUND], ["--max-old-space-size=96"]);
    expect(message).toContain("has more than 64 MiB");
  });

  it("holds no more than the limit of a large file", async () => {
    const big = join(folder, "measured.csv");
    writeFileSync(big, "");
    truncateSync(big, 200_000_000);
    const probe = [
      `const { readInput } = await import(${JSON.stringify(join(ROOT, "src/cli/files/read-input.ts"))});`,
      "let most = 0;",
      "const timer = setInterval(() => { most = Math.max(most, process.memoryUsage().arrayBuffers); }, 1);",
      `await readInput(${JSON.stringify(big)}).catch(() => undefined);`,
      "clearInterval(timer);",
      "console.log(Math.max(most, process.memoryUsage().arrayBuffers));",
    ].join("\n");
    const { out } = await ended(
      spawn(process.execPath, ["--import", "tsx", "--input-type=module", "-e", probe], { cwd: ROOT }),
      "",
    );
    expect(Number(out)).toBeGreaterThan(0);
    expect(Number(out)).toBeLessThan(100 * 2 ** 20);
  });

  it.each([
    ["a missing file", () => join(folder, "gone.csv"), "gone.csv cannot be read: there is no such file"],
    ["a folder", () => folder, "cannot be read: it is a folder; name a file"],
    [
      "binary data",
      () => {
        const path = join(folder, "bytes.csv");
        writeFileSync(path, new Uint8Array([1, 2, 3, 0, 255, 0]));
        return path;
      },
      "plain text",
    ],
  ])("refuses %s", async (_, path, text) => {
    expect(await refusal(["forecast", "--temperatures", path(), ...FOUND])).toContain(text);
  });

  it("says what is wrong with the words", async () => {
    expect(await refusal(["forcast"])).toContain("did you mean forecast?");
  });
});
