import { expect, describe, it } from "vitest";
import { BUDGETS, type Budget, bundled } from "./sizes.ts";

describe("size, minified and gzipped", () => {
  it.each(BUDGETS)("$name", async (budget) => {
    const { bytes, packages } = await bundled(budget.code);
    console.log(row(budget, bytes));
    for (const name of budget.without ?? []) expect(packages).not.toContain(name);
    if (budget.notYet === null) {
      expect(bytes, "over its goal").toBeLessThanOrEqual(budget.goal);
      return;
    }
    expect(bytes, "grew, though it is over its goal already").toBeLessThanOrEqual(budget.notYet);
    expect(bytes, "meets its goal: set notYet to null in sizes.ts").toBeGreaterThan(budget.goal);
    // Room that was won is not lent out again.
    expect(budget.notYet, "shrank: lower notYet in sizes.ts").toBeLessThanOrEqual(bytes * 1.1);
  });
});

function row({ name, goal, notYet }: Budget, bytes: number): string {
  const status = notYet === null ? "met" : `not yet, at most ${notYet}`;
  return `${name.padEnd(40)}goal ${String(goal).padStart(6)}  is ${String(bytes).padStart(6)}  ${status}`;
}
