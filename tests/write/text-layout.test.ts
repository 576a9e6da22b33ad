import fc from "fast-check";
import { Temporal } from "temporal-polyfill";
import { describe, expect, it } from "vitest";
import {
  columns,
  dayLabel,
  daysThrough,
  fullDayLabel,
  inSeveralYears,
  isMonday,
  wrapped,
} from "../../src/write/layout/text-layout.ts";

// temporal-polyfill is the independent calendar here.
const plainDate = fc
  .integer({ min: -700_000, max: 2_900_000 })
  .map((days) => Temporal.PlainDate.from("1970-01-01").add({ days }))
  .filter(({ year }) => year >= 1 && year <= 9999);

const weekday = ["", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"];
const month = ["", "Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

describe("dayLabel", () => {
  it("names the weekday, the date and the month of any day", () => {
    fc.assert(
      fc.property(plainDate, (date) => {
        const day = date.toString();
        const number = String(date.day);
        expect(dayLabel(day)).toBe(`${weekday[date.dayOfWeek]} ${number.padStart(2)} ${month[date.month]}`);
        expect(fullDayLabel(day)).toBe(
          `${weekday[date.dayOfWeek]} ${number} ${month[date.month]} ${day.slice(0, 4)}`,
        );
        expect(isMonday(day)).toBe(date.dayOfWeek === 1);
      }),
    );
  });
});

describe("daysThrough", () => {
  it("lists both ends, over a leap day", () => {
    expect(daysThrough("2028-02-28", "2028-03-01")).toEqual(["2028-02-28", "2028-02-29", "2028-03-01"]);
    expect(daysThrough("2026-06-08", "2026-06-08")).toEqual(["2026-06-08"]);
  });
});

describe("inSeveralYears", () => {
  it("leaves out what is not known", () => {
    expect(inSeveralYears(["2026-12-31", null, "2026-01-01T05:00"])).toBe(false);
    expect(inSeveralYears(["2026-12-31", null, "2027-01-01"])).toBe(true);
    expect(inSeveralYears([null])).toBe(false);
  });
});

describe("wrapped", () => {
  it("keeps every word in its order and no line longer than the width", () => {
    fc.assert(
      fc.property(
        fc.array(fc.stringMatching(/^[a-zé°%]{1,30}$/), { minLength: 1 }),
        fc.integer({ min: 40, max: 90 }),
        (words, width) => {
          const text = wrapped(words.join(" "), { width, first: "  - ", rest: "    " });
          for (const line of text.split("\n")) expect(line.length).toBeLessThanOrEqual(width);
          expect(text.slice(4).split(/\s+/)).toEqual(words);
        },
      ),
    );
  });

  it("keeps a number and its unit together", () => {
    expect(wrapped("it is 11.5 °C here, 90 % of it", { width: 9 })).toBe(
      "it is\n11.5 °C\nhere,\n90 % of\nit",
    );
  });

  it("cuts a word that is longer than a line, such as a path", () => {
    const path = `/home/${"x".repeat(200)}/porch.csv`;
    const lines = wrapped(`see ${path}`, { first: "  - ", rest: "    " }).split("\n");
    expect(Math.max(...lines.map((line) => line.length))).toBe(80);
    expect(lines.map((line) => line.slice(4)).join("")).toBe(`see${path}`);
  });
});

describe("columns", () => {
  it("aligns cells, numbers to the right, without blanks at the end", () => {
    expect(
      columns(
        [
          ["day", "sum", ""],
          ["Mon", "1.5", "x"],
          ["Tue", "10.25", ""],
        ],
        [1],
      ),
    ).toBe("day    sum\nMon    1.5  x\nTue  10.25");
  });
});
