import { expect, it } from "vitest";
import { percentText } from "../../src/rearing/chance-text.ts";

it("says 0 % and 100 % of nothing that is merely close to it", () => {
  expect([0, 0.004, 0.005, 0.5, 0.99, 0.9949, 0.995, 0.9999, 1].map(percentText)).toEqual([
    "0 %",
    "<1 %",
    "1 %",
    "50 %",
    "99 %",
    "99 %",
    ">99 %",
    ">99 %",
    "100 %",
  ]);
});
