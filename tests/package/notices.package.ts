import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, it } from "vitest";
import { ROOT } from "./consumer/project.ts";
import { thirdPartyNotices } from "./notices.ts";

it("docs/third-party.txt is what npm run report:notices writes", async () => {
  expect(readFileSync(join(ROOT, "docs/third-party.txt"), "utf8")).toBe(await thirdPartyNotices());
});
