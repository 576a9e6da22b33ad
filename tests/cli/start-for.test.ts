import { describe, expect, it } from "vitest";
import type { DatePlan, RoomPlan } from "../../src/rearing/start/start-plan.ts";
import { expectPlainPage } from "../write/plain-text.ts";
import { moltline, refused } from "./in-memory.ts";

const EGGS = "--species danaus-plexippus --found egg --count 12 --age new";
const WANTED = `start-for --day 2027-07-12 ${EGGS}`;
const PAST = "--past-years new-york.csv --unit C";

const planOf = async <Plan>(words: string): Promise<Plan> => {
  const { code, out, err } = await moltline(`${words} --json`);
  expect([code, err]).toEqual([0, ""]);
  return JSON.parse(out);
};

describe("start-for", () => {
  it("explains itself and names its options", async () => {
    const { code, out } = await moltline("start-for --help");
    expect(code).toBe(0);
    expectPlainPage(out);
    for (const name of [
      "day",
      "milestone",
      "hours",
      "aim",
      "first",
      "last",
      "room",
      "hottest",
      "past-years",
      "json",
    ])
      expect(out).toContain(`--${name}`);
    expect((await moltline("help")).out).toContain("start-for");
  });

  it("plans on past years alone, with the cautions that fit", async () => {
    const { code, out, err } = await moltline(`${WANTED} ${PAST} --zone America/New_York`);
    expect([code, err]).toEqual([0, ""]);
    expectPlainPage(out);
    expect(out).toMatch(/BEST: start on \w{3} 1\d Jun 2027/);
    expect(out).toContain("TAKE CARE");
    expect(out).toContain("Keep plant sap out of your eyes");
    expect(out.replace(/\s+/g, " ")).toContain("the same season of 4 past years (2012, 2013, 2014, 2015)");
  });

  it("goes on from the temperatures so far with past years", async () => {
    const words = `start-for --day 2015-07-12 ${EGGS} --temperatures new-york.csv --until 2015-06-15 ${PAST}`;
    const { best, notes } = await planOf<DatePlan>(words);
    expect(best?.on).toMatch(/^2015-06-1\d$/);
    const about = notes.find(({ code }) => code === "weather-ensemble")?.message;
    expect(about).toContain("From 2015-06-16 on");
    expect(about).toContain("(2012, 2013, 2014)");
  });

  it("takes a held temperature, days to choose from, hours, a milestone and an aim", async () => {
    const plan = await planOf<DatePlan>(
      `${WANTED} --constant 77 --unit F --first 2027-07-01 --last 2027-07-11 --hours 06:00,18:00 --milestone hatch --aim half`,
    );
    // 45 degree-days at 13.5 a day: 3 days and 8 hours before.
    expect(plan).toMatchObject({ milestone: "instar-1", hours: ["06:00", "18:00"], aim: "half" });
    expect(plan.best?.on).toBe("2027-07-09");
    expect(plan.ranked).toHaveLength(11);
  });

  it("finds the room, in either unit", async () => {
    const words = `${WANTED} --on 2027-06-14T12:00`;
    const celsius = await planOf<RoomPlan>(`${words} --room 20,28`);
    const fahrenheit = await planOf<RoomPlan>(`${words} --room 68,82.4 --unit F`);
    // 28 days for 352 degree-days.
    expect(celsius.best?.temperature).toBeCloseTo(24.07, 1);
    expect(fahrenheit.best?.temperature).toBeCloseTo(celsius.best?.temperature ?? 0, 1);
    const { out } = await moltline(`${words} --room 68,82.4 --unit F`);
    expectPlainPage(out);
    expect(out).toMatch(/keep the room at 75\.\d °F/);
  });

  it("ends well, and says why, where nothing can be advised", async () => {
    const { code, out } = await moltline(`${WANTED} --on 2027-07-10 --room 15,25`);
    expect(code).toBe(0);
    expect(out).toContain("No start can be advised.");
    expect((await moltline(`${WANTED} --on 2027-06-10 --room 5,10`)).out.replace(/\s+/g, " ")).toContain(
      "the warmest room is 10 °C, and 11.5 °C is the highest lower threshold on the way",
    );
  });

  it.each<[string, string]>([
    [`start-for ${EGGS} ${PAST}`, "--day is missing"],
    [`start-for --day 12.7.2027 ${EGGS} ${PAST}`, '--day is "12.7.2027"'],
    [`start-for --day 2027-07-12 --found egg ${PAST}`, "--species is missing"],
    [`start-for --day 2027-07-12 --species monarch ${PAST}`, "--found is missing"],
    [`${WANTED} ${PAST} --on 2027-06-01`, "--on is for --room"],
    [`${WANTED} ${PAST} --normals new-york.csv`, "or leave out --normals."],
    [`${WANTED} ${PAST} --weather new-york.csv`, "or leave out --weather."],
    [`${WANTED} ${PAST} --until 2015-06-01`, "or leave out --until."],
    [`${WANTED} ${PAST} --first 2027-06-20 --last 2027-06-10`, "must run forwards"],
    [`${WANTED} ${PAST} --last 2027-08-01`, "end on 2027-07-12 or before"],
    [`${WANTED} ${PAST} --hours 09:00`, "two times of day"],
    [`${WANTED} ${PAST} --hours 15:00,09:00`, "--hours are 15:00 to 09:00"],
    [`${WANTED} ${PAST} --hours 9am,10:00`, '--hours is "9am"'],
    [`${WANTED} ${PAST} --aim most`, '--aim is "most"'],
    [`${WANTED} ${PAST} --milestone wings`, '--milestone is "wings"'],
    [`${WANTED} ${PAST} --milestone egg`, '--milestone is "egg"'],
    [`${WANTED} --constant 32`, "York & Oberhauser 2002"],
    [`${WANTED} --room 20,28`, "--on is missing"],
    [`${WANTED} --on 2027-06-14 --room 20`, '--room is "20"'],
    [`${WANTED} --on 2027-06-14 --room 28,20`, '--room is "28,20"'],
    [
      `${WANTED} --on 2027-06-14 --room 20,31`,
      "--room is 31 °C (87.8 °F); held heat above 29 °C (84.2 °F) is harmful",
    ],
    [
      `${WANTED} --on 2027-06-14 --room 20,28 --hottest 30`,
      "--hottest is 30 °C (86 °F); it can lower the limit",
    ],
    [`${WANTED} --on 2027-06-14 --room 20,28 --hottest 26`, "is what you ruled out"],
    [`${WANTED} --on 2027-06-14 --room 20,28 ${PAST}`, "leave out --past-years"],
    [`${WANTED} --on 2027-06-14 --room 20,28 --first 2027-06-01`, "leave out --first"],
  ])("%s is refused", async (words, says) => {
    expect((await refused(words)).replace(/\s+/g, " ")).toContain(says);
  });
});
