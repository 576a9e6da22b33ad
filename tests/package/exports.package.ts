import { readFileSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { expect, it } from "vitest";
import { exportLists } from "../report/exports.ts";
import { ROOT } from "./consumer/project.ts";

// A change of docs/api is a change of what users rely on; a review sees it there.
it("docs/api is what npm run report:api writes", () => {
  const api = join(ROOT, "docs/api");
  const written = readdirSync(api).map((file) => [file, readFileSync(join(api, file), "utf8")]);
  expect(Object.fromEntries(written)).toEqual(exportLists());
});
