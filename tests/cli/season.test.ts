import { describe, expect, it } from "vitest";
import type { SeasonOutlook } from "../../src/rearing/season/season-result.ts";
import { expectPlainPage } from "../write/plain-text.ts";
import { moltline, refused } from "./in-memory.ts";

const HERE = "season --temperatures new-york.csv --unit C --species danaus-plexippus";

const outlookOf = async (words: string): Promise<SeasonOutlook> => {
  const { code, out, err } = await moltline(`${words} --json`);
  expect([code, err]).toEqual([0, ""]);
  return JSON.parse(out);
};

describe("season", () => {
  it("explains itself and names its options", async () => {
    const { code, out } = await moltline("season --help");
    expect(code).toBe(0);
    expectPlainPage(out);
    for (const name of [
      "first-eggs",
      "first-heat",
      "pre-laying",
      "frost",
      "no-frost",
      "share",
      "level",
      "hemisphere",
    ])
      expect(out).toContain(`--${name}`);
  });

  it("prints a page with the cautions that fit", async () => {
    const { code, out, err } = await moltline(`${HERE} --first-eggs 05-20 --latitude 40.8 --longitude -74`);
    expect([code, err]).toEqual([0, ""]);
    expectPlainPage(out);
    expect(out).toContain("BROODS");
    expect(out).toContain("LAST EGGS");
    expect(out).toMatch(/^ {2}2012 +20 May/m);
    expect(out).toContain("Ask before you collect");
    expect(out.replace(/\s+/g, " ")).toContain("Goehring & Oberhauser 2002");
  });

  it("asks what the options ask", async () => {
    const outlook = await outlookOf(
      `${HERE} --first-eggs 06-01 --pre-laying 10 --frost -2 --share 0.5 --level 0.8 --milestone pupa --hemisphere north`,
    );
    expect(outlook).toMatchObject({
      frostBelow: -2,
      share: 0.5,
      level: 0.8,
      milestone: "pupa",
      hemisphere: "north",
      firstEggsBy: "date",
      preLaying: { value: 10 },
    });
    expect(outlook.years[0]?.firstEggs).toBe("2012-06-01");
    expect((await outlookOf(`${HERE} --no-frost`)).frostBelow).toBeNull();
    expect((await outlookOf(`${HERE} --first-heat 100`)).firstEggsBy).toBe("degree-days");
  });

  it("takes limits in the unit of the file", async () => {
    const lines = Array.from({ length: 730 }, (_, i) => {
      const date = new Date(Date.UTC(2025, 0, 1 + i)).toISOString().slice(0, 10);
      return `${date},${i % 365 > 120 && i % 365 < 280 ? "60,84" : "20,40"}`;
    });
    const file = { "f.csv": `date,low °F,high °F\n${lines.join("\n")}\n` };
    const { out, code } = await moltline(
      "season --temperatures f.csv --species monarch --frost 28 --first-heat 90 --json",
      file,
    );
    expect(code).toBe(0);
    const outlook: SeasonOutlook = JSON.parse(out);
    expect(outlook.frostBelow).toBeCloseTo(-2.22, 2);
    expect(outlook.years).toHaveLength(2);
    const page = await moltline("season --temperatures f.csv --species monarch --frost 28", file);
    expect(page.out).toContain("a frost below 28 °F");
  });

  it.each<[string, string]>([
    ["season --temperatures new-york.csv --unit C", "--species is missing"],
    [`${HERE} --first-eggs 20.5.`, '--first-eggs is "20.5."'],
    [`${HERE} --first-eggs 05-20 --first-heat 100`, "give one of them"],
    [`${HERE} --first-heat -4`, "--first-heat is -4"],
    [`${HERE} --frost 0 --no-frost`, "--frost and --no-frost were both given"],
    [`${HERE} --share 2`, "--share is 2"],
    [`${HERE} --level 95`, "--level is 95"],
    [`${HERE} --pre-laying -1`, "--pre-laying is -1"],
    [`${HERE} --latitude 40`, "--longitude is missing"],
    [`${HERE} --hemisphere west`, '--hemisphere is "west"'],
    [`${HERE} --milestone egg`, '--milestone is "egg"'],
    ["season --temperatures cold.csv --unit C --species monarch", "hold no whole season"],
    ["season --temperatures gap.csv --unit C --species monarch", "with --fill-gaps"],
  ])("%s is refused", async (words, says) => {
    expect((await refused(words)).replace(/\s+/g, " ")).toContain(says);
  });
});
