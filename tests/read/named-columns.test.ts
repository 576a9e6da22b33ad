import { describe, expect, test } from "vitest";
import { readHourlyWeather, readLog, readTemperatures, readTrials } from "../../src/read/index.ts";
import { refusalOf } from "../support/refusal.ts";

describe("a header that the caller names and that is not there is refused, not passed over", () => {
  test.each([
    ["count", () => readLog("stage,seen on,n\npupa,2026-07-04,5", { columns: { count: "how mny" } })],
    ["animals", () => readTrials("temp °C,days\n18,30", { columns: { animals: "larvae" } })],
    [
      "cloud",
      () =>
        readHourlyWeather("time,temp °C,wind m/s,rain mm\n2026-07-05T12:00Z,24,2,0", {
          columns: { cloud: "sky" },
        }),
    ],
  ])("columns.%s", (column, read) => {
    const { code, path, message } = refusalOf(read);
    expect([code, path]).toEqual(["unknown-column", ["columns", column]]);
    expect(message).toContain(`that columns.${column} names; row 1 has`);
  });
});

describe("a column of temperatures that is named beside a minimum and a maximum", () => {
  const text = "time,min °C,max °C,shelf °C\n2026-05-01 06:00,8,24,20\n2026-05-01 07:00,8,24,21";

  test("is the one that is read", () => {
    const { series } = readTemperatures(text, { columns: { temperature: "shelf °C" } });
    expect(series.kind === "readings" && [...series.temperature]).toEqual([20, 21]);
  });

  test("is left where another file has it, or the minimum is named too", () => {
    const days = text.replaceAll(" 06:00", "").replace("2026-05-01 07:00", "2026-05-02");
    expect(readTemperatures(days, { columns: { temperature: "probe" } }).format).toBe("daily-csv");
    const both = { temperature: "shelf °C", min: "min °C" };
    expect(readTemperatures(days, { columns: both }).format).toBe("daily-csv");
  });
});

test("columns.rain on a column in % is sent to columns.chance", () => {
  const text = "time,temp °C,wind m/s,wet %\n2026-07-05T12:00Z,24,2,0";
  const { message } = refusalOf(() => readHourlyWeather(text, { columns: { rain: "wet %" } }));
  expect(message).toContain("name it with columns.chance");
});
