// @vitest-environment jsdom
import { describe, expect, it } from "vitest";
import { dayPlan } from "../../src/rearing/plan/day-plan.ts";
import { findSpecies } from "../../src/species/catalogue.ts";
import { danausPlexippus } from "../../src/species/danaus-plexippus.ts";
import { htmlText } from "../../src/write/plan/html-text.ts";
import { planPage } from "../../src/write/plan/plan-page.ts";
import { inventedDays, inventedForecast } from "../support/invented-season.ts";

const white = findSpecies("pieris-rapae");
const forecast = inventedForecast();
const page = (name: string, other = "shelf"): Document => {
  const plan = dayPlan(
    [
      { name, lifeCycle: danausPlexippus, forecast },
      {
        name: other,
        lifeCycle: white,
        forecast: inventedForecast({ lifeCycle: white, found: { stage: "egg", on: "2026-06-10", count: 4 } }),
      },
    ],
    { away: ["2026-07-04"], supplies: [{ leaves: 50 }] },
  );
  return new DOMParser().parseFromString(planPage(plan), "text/html");
};

const HOSTILE = [
  '<script>alert("x")</script>',
  '"><img src=x onerror=alert(1)>',
  'Tom & Jerry\'s <b>"cage"</b>',
  "&lt;script&gt;",
  "</title></style><script>",
  "]]><!-- -->",
];

describe("htmlText", () => {
  it("leaves nothing that a page could take for markup", () => {
    expect(htmlText(`a<b>&"c"'d'\u0000\u001b`)).toBe("a&lt;b&gt;&amp;&quot;c&quot;&#39;d&#39;  ");
  });
});

describe("planPage", () => {
  it.each(HOSTILE)("shows a name as it was written and runs none of it: %s", (name) => {
    const made = page(name);
    const plain = page("plain");
    expect(made.querySelectorAll("script, img, iframe, link, object").length).toBe(0);
    expect(made.querySelectorAll("*").length).toBe(plain.querySelectorAll("*").length);
    for (const element of made.querySelectorAll("*"))
      for (const { name: attribute } of element.attributes) expect(attribute).not.toMatch(/^on/);
    const cells = [...made.querySelectorAll("td.name")].map((cell) => cell.textContent);
    expect(cells).toContain(name);
    expect(made.querySelector("svg desc")?.textContent).toContain(name);
    expect(made.querySelector(".first")?.textContent).toContain(name);
  });

  it("has the same for words of a species of one's own", () => {
    const [bad] = HOSTILE;
    const own = { ...danausPlexippus, commonName: bad ?? "", latinName: "Danaus <i>sp.</i>" };
    const html = planPage(
      dayPlan([{ name: "A", lifeCycle: own, forecast: inventedForecast({ lifeCycle: own }) }]),
    );
    expect(html).not.toMatch(/<script|<i>/);
    expect(html).toContain("Danaus &lt;i&gt;sp.&lt;/i&gt;");
  });

  it("asks for nothing from elsewhere and says so to the browser", () => {
    const html = planPage(dayPlan([{ name: "A", lifeCycle: danausPlexippus, forecast }]));
    expect(html).not.toMatch(/\b(?:src|href)=|@import|url\((?!#)/);
    expect(html.replaceAll("http://www.w3.org/2000/svg", "")).not.toMatch(/https?:/);
    expect(html).toContain("default-src 'none'");
    expect(html).not.toMatch(/undefined|NaN|null|\[object/);
  });

  it("has a row for each day with something to do, and a box to tick", () => {
    const plan = dayPlan([{ name: "A", lifeCycle: danausPlexippus, forecast }]);
    const made = new DOMParser().parseFromString(planPage(plan), "text/html");
    const busy = plan.days.filter(({ tasks }) => tasks.length > 0).length;
    expect(made.querySelectorAll(".box").length).toBe(busy);
    expect(made.querySelector("caption")?.textContent).toBe("Day by day");
    const width = made.querySelectorAll("thead th").length;
    for (const row of made.querySelectorAll("tbody tr")) {
      const spans = [...row.children].map((cell) => Number(cell.getAttribute("colspan") ?? 1));
      expect(spans.reduce((sum, one) => sum + one, 0)).toBe(width);
    }
  });

  it("tells the drawing in words, with every stage and its dates", () => {
    const made = page("porch");
    const svg = made.querySelector("svg");
    expect(svg?.getAttribute("role")).toBe("img");
    expect(svg?.querySelector("title")?.textContent).toBe("When each stage begins");
    const words = svg?.querySelector("desc")?.textContent ?? "";
    expect(words).toMatch(/porch: first instar \d+ Jun \(\d+ Jun to \d+ Jun\); second instar/);
    expect(words).toContain("pupa darkens");
    expect(words.match(/adult \d+ Jul/g)).toHaveLength(2);
  });

  it("draws a shape of its own for each kind of begin, inside the drawing", () => {
    const svg = page("porch").querySelector("svg");
    const [, , width = 0, height = 0] = (svg?.getAttribute("viewBox") ?? "").split(" ").map(Number);
    expect(svg?.querySelectorAll("circle").length).toBe(2);
    for (const bar of svg?.querySelectorAll("rect") ?? []) {
      const number = (name: string): number => Number(bar.getAttribute(name));
      expect(number("x")).toBeGreaterThanOrEqual(0);
      expect(number("x") + number("width")).toBeLessThanOrEqual(width);
      expect(number("y") + number("height")).toBeLessThanOrEqual(height);
    }
  });

  it("is whole where dates are missing", () => {
    const short = inventedForecast({ temperatures: inventedDays("2026-05-01", 55) });
    const html = planPage(dayPlan([{ name: "A", lifeCycle: danausPlexippus, forecast: short }]));
    expect(html).toContain("not known");
    expect(html).not.toMatch(/undefined|NaN|null|Infinity/);
  });
});

it("says of one animal alone what it may be at, and leaves no quiet day without a reason", () => {
  const found = { stage: "egg", on: "2026-06-08", count: 1 } as const;
  const plan = dayPlan([{ name: "A", lifeCycle: danausPlexippus, forecast: inventedForecast({ found }) }]);
  const text = new DOMParser().parseFromString(planPage(plan), "text/html");
  const cells = [...text.querySelectorAll("tbody td:nth-child(3)")].map((cell) => cell.textContent);
  expect(cells).toContain("perhaps molting");
  expect(cells.some((cell) => cell.startsWith("quiet day: perhaps "))).toBe(true);
  expect(cells).not.toContain("quiet day: ");
});
