import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import type { Forecast } from "../../src/forecast/question/result.ts";
import type { ReleasePlan } from "../../src/rearing/release/release-plan.ts";
import { expectPlainPage } from "../write/plain-text.ts";
import { FOUND, moltline, refused } from "./in-memory.ts";

const WEEK = {
  "week.csv": readFileSync(new URL("../../fixtures/weather/invented-week.csv", import.meta.url)),
};
const HERE = "--latitude 40.7 --longitude -74 --zone America/New_York";
const SEEN = `release --species monarch --weather-hours week.csv ${HERE} --emerged 2015-07-03T07:10`;
const FORECAST = `release --temperatures new-york.csv ${FOUND} --weather-hours week.csv ${HERE}`;

async function plan(words: string, files: Parameters<typeof moltline>[1] = WEEK): Promise<ReleasePlan> {
  const { code, out, err } = await moltline(`${words} --json`, files);
  expect([code, err]).toEqual([0, ""]);
  return JSON.parse(out);
}

describe("moltline release", () => {
  it("explains itself on a plain page", async () => {
    const { out } = await moltline("release --help");
    expectPlainPage(out);
    for (const name of [
      "weather-hours",
      "emerged",
      "unfit",
      "warm",
      "wind",
      "fair-hours",
      "sun-left",
      "hold",
    ])
      expect(out).toContain(`--${name}`);
    expect(out).toContain("local authority");
    expect((await moltline("")).out).toContain("release");
  });

  it("ranks the hours after an emergence that was seen", async () => {
    const { code, out, err } = await moltline(SEEN, WEEK);
    expect([code, err]).toEqual([0, ""]);
    expectPlainPage(out);
    expect(out).toContain("SEEN: emerged on Fri 3 Jul 2015 at 07:10");
    expect(out).toMatch(/^ {2}1 +Fri {2}3 Jul 1\d:00-1\d:00 /m);
    expect(out).toContain("TAKE CARE");
    expect(out.indexOf("Ask your local authority")).toBeLessThan(out.indexOf("fit hour"));
  });

  it("reads one place of several, and columns by their names", async () => {
    const hours = Array.from({ length: 14 }, (_, i) => String(i + 6).padStart(2, "0"));
    const places = ["time,temp °C,wind m/s,rain mm,station"];
    const named = ["When,Warmth,wind m/s,rain mm"];
    for (const hour of hours) {
      places.push(`2015-07-03 ${hour}:00,22,1,0,A`, `2015-07-03 ${hour}:00,5,1,0,B`);
      named.push(`2015-07-03 ${hour}:00,22,1,0`);
    }
    const files = { "p.csv": places.join("\n"), "n.csv": named.join("\n") };
    const run = (more: string) => SEEN.replace("--weather-hours week.csv", `--weather-hours ${more}`);
    const best = async (more: string) => (await plan(run(more), files)).emergences;
    const columns = "--weather-time-column when --weather-temperature-column warmth --weather-unit C";
    expect(await best("p.csv --weather-place A")).toEqual(await best(`n.csv ${columns}`));
    expect(await refused(run("p.csv"), files)).toContain("choose one with --weather-place");
    expect(await refused(run("p.csv --weather-place C"), files)).toContain('--weather-place is "C"');
    for (const name of ["place", "time-column", "temperature-column", "date-column"])
      expect(await refused(run(`p.csv --${name} A`), files)).toContain(`it is --weather-${name}`);
  });

  it("takes the emergence from a forecast", async () => {
    const result = await plan(`${FORECAST} --count 12 --unfit 1`);
    expect(result.emergences.map(({ which, emergesAt }) => [which, emergesAt?.slice(0, 10)])).toEqual([
      ["early", "2015-07-03"],
      ["expected", "2015-07-05"],
      ["late", "2015-07-07"],
    ]);
    expect(result).toMatchObject({ healthy: 11, unfit: { count: 1 }, ruledOut: null });
    expect(result.notes.map(({ code }) => code)).toEqual(
      expect.arrayContaining(["gaps-in-readings", "common-practice", "constant-from-memory"]),
    );
    expect(result.cautions[0]?.id).toBe("local-law");
  });

  it("takes the emergence from a forecast that learned from a log", async () => {
    const files = { ...WEEK, "log.csv": "stage,seen on,count\npupated,2015-06-27,12\n" };
    const words = `${FORECAST} --count 12 --log log.csv`;
    const result = await plan(words, files);
    const { out } = await moltline(
      `forecast --temperatures new-york.csv ${FOUND} --zone America/New_York --count 12 --log log.csv --json`,
      files,
    );
    const learned: Forecast = JSON.parse(out);
    const { early, expected, late } = learned.stages.at(-1)?.begins ?? {};
    expect(result.emergences.map(({ emergesAt }) => emergesAt)).toEqual([early, expected, late]);
    expect(result.notes.map(({ code }) => code)).toContain("learned-from-log");
    const usual = await plan(`${FORECAST} --count 12`);
    const span = ({ emergences }: ReleasePlan): number =>
      Date.parse(emergences[2]?.emergesAt ?? "") - Date.parse(emergences[0]?.emergesAt ?? "");
    expect(span(result)).toBeLessThan(span(usual));
  });

  it("takes several emergences, and shows a seen one beyond the weather as such", async () => {
    const result = await plan(`${SEEN} --emerged 2015-07-06T07:10 --emerged 2015-07-28T09:00`);
    const [first, windy, beyond] = result.emergences;
    expect(first?.best).not.toBeNull();
    expect(windy?.firstDay).toMatchObject({ best: null, absence: { reason: "nothing-fits" } });
    expect(windy?.advice.map(({ code }) => code)).toEqual(expect.arrayContaining(["keep", "offer-food"]));
    expect(beyond).toMatchObject({ best: null, absence: { reason: "beyond-weather" } });
  });

  it("takes limits in the units of the weather file", async () => {
    const file = { "week.csv": "time,temp °F,wind mph,rain %\n" + fahrenheitDay() };
    const words = SEEN.replace("2015-07-03T07:10", "2015-07-03T05:00");
    const usual = await plan(words, file);
    const strict = await plan(`${words} --warm 77 --wind 6 --rain-chance 3`, file);
    expect(usual.emergences[0]?.best?.weather.temperature).toBeCloseTo(25, 9);
    expect(strict.criteria.warm.value).toBeCloseTo(25, 9);
    expect(strict.criteria.wind.value).toBeCloseTo(6 * 0.44704, 9);
    expect(strict.criteria.wind.source).toContain("set by the user");
    expect(strict.emergences[0]?.best).not.toBeNull();
    expect((await plan(`${words} --warm 78`, file)).emergences[0]?.firstDay?.best).toBeNull();
    const { out } = await moltline(words, file);
    expect(out).toMatch(/77 °F +5 mph/);
  });

  it("reads the weather from standard input", async () => {
    const words = SEEN.replace("week.csv", "-");
    const named = await plan(SEEN);
    expect((await plan(words, { "-": WEEK["week.csv"] })).emergences).toEqual(named.emergences);
  });

  it.each(["pieris-rapae", "harmonia-axyridis", "coccinella-septempunctata"])(
    "has no hours for %s, and asks for no file to say so",
    async (species) => {
      const { code, out, err } = await moltline(`release --species ${species}`);
      expect([code, err]).toEqual([0, ""]);
      expectPlainPage(out);
      expect(out).toContain("NO RELEASE");
      expect(out).not.toContain("fit hour");
      const json = await plan(`release --species ${species}`);
      expect(json.emergences).toEqual([]);
      expect(json.ruledOut).not.toBeNull();
    },
  );

  it("nor for a species file that rules it out", async () => {
    const { out: own } = await moltline("species pieris-rapae --json");
    const words = SEEN.replace("--species monarch", "--species-file own.json");
    const { out } = await moltline(words, { ...WEEK, "own.json": own });
    expect(out).toContain("NO RELEASE");
  });
});

describe("moltline release refuses", () => {
  const CSV = (header: string): Parameters<typeof refused>[1] => ({
    "week.csv": `${header}\n2015-07-03 12:00,24,2,0\n`,
  });

  it.each([
    [SEEN.replace("--weather-hours week.csv", ""), "--weather-hours is missing"],
    [SEEN.replace("--latitude 40.7 --longitude -74", ""), "--latitude and --longitude are missing"],
    [SEEN.replace("--latitude 40.7", ""), "--latitude is missing"],
    [SEEN.replace("--zone America/New_York", ""), "--zone is missing"],
    [SEEN.replace("-74", "74"), "--longitude is 74"],
    [SEEN.replace("-74", "274"), "--longitude is 274"],
    [`${SEEN} --found egg`, "--emerged and --found were both given"],
    [`${SEEN} --log log.csv`, "--emerged and --log were both given"],
    [`${FORECAST} --cohort A`, "--cohort is about what a log teaches"],
    [`${SEEN} --temperatures new-york.csv`, "--emerged and --temperatures were both given"],
    [SEEN.replace("2015-07-03T07:10", "2015-07-03"), '--emerged is "2015-07-03", a day; it must have a time'],
    [SEEN.replace("2015-07-03T07:10", "noon"), '--emerged is "noon"'],
    [`${SEEN} --unfit 2`, "--unfit is 2, more than the 1 adults"],
    [`${SEEN} --warm 99`, "--warm is 99; it must be from -60 to 60 °C"],
    [`${SEEN} --fair-hours 1.5`, "--fair-hours is 1.5"],
    [`${SEEN} --longest-hold 3`, "--longest-hold is 3"],
    [`${SEEN} --wind-unit mph`, "week.csv: the column", "--wind-unit mph; they must agree"],
    [`${SEEN} --weather-unit F`, "week.csv: the column", "--weather-unit °F; they must agree"],
    [FORECAST.replace("--found egg", ""), "--found is missing"],
    [`${SEEN} --unit K`.replace("--unit K", "--weather-unit K"), '--weather-unit is "K"'],
  ])("%s", async (words, ...says) => {
    const message = await refused(words, WEEK);
    for (const text of says) expect(message).toContain(text);
    expect(message).toMatch(/^moltline: [^\n]*[.?]\n$/);
  });

  it.each([
    ["time,temp,wind m/s,rain mm", '"temp" names no unit', "--weather-unit F"],
    ["time,temp °C,wind,rain mm", '"wind" names no unit', "--wind-unit"],
    ["time,temp °C,wind m/s,snow", "--rain-column"],
    ["time,temp °C,wind m/s,rain", '"rain" names no unit'],
  ])("a weather file with %s", async (header, ...says) => {
    const message = await refused(SEEN, CSV(header));
    for (const text of ["week.csv: ", ...says]) expect(message).toContain(text);
  });
});

/** Two days of 77 °F, a wind of 5 mph and a chance of rain of 3 %. */
function fahrenheitDay(): string {
  return Array.from({ length: 48 }, (_, i) => {
    const day = i < 24 ? "2015-07-03" : "2015-07-04";
    return `${day} ${String(i % 24).padStart(2, "0")}:00,77,5,3`;
  }).join("\n");
}

describe("moltline release --emerged", () => {
  it.each([
    "--method average",
    "--shares 0.1,0.5,0.9",
    "--until 2026-07-01",
    "--format json",
    "--exchange-swapped",
  ])("does not pass over %s, which a forecast would take", async (option) => {
    const message = await refused(`${SEEN} ${option}`, WEEK);
    expect(message).toContain(`--emerged and ${option.split(" ")[0]} were both given`);
  });

  it("names the option for the unit of the weather", async () => {
    const message = await refused(`${SEEN} --unit F`, WEEK);
    expect(message).toContain("for the weather it is --weather-unit.");
  });
});
