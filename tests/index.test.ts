import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import * as core from "../src/index.ts";
import * as plot from "../src/plot/index.ts";
import * as read from "../src/read/index.ts";
import * as sql from "../src/sql/index.ts";
import * as write from "../src/write/index.ts";

// What users can import. A change of tests/surface.json is a change of what they rely on.
const surface: Readonly<Record<string, readonly string[]>> = JSON.parse(
  readFileSync(new URL("surface.json", import.meta.url), "utf8"),
);

const entries = {
  moltline: core,
  "moltline/read": read,
  "moltline/write": write,
  "moltline/plot": plot,
  "moltline/sql": sql,
};

describe("surface", () => {
  it("has the entries of the committed list", () => {
    expect(Object.keys(surface)).toEqual(Object.keys(entries));
  });

  it.each(Object.entries(entries))("%s exports the names of the committed list", (name, entry) => {
    expect(Object.keys(entry).sort()).toEqual(surface[name]);
  });

  it("has a value behind every name", () => {
    for (const entry of Object.values(entries)) {
      for (const value of Object.values<unknown>({ ...entry })) expect(value).toBeDefined();
    }
  });

  it("is what package.json offers", () => {
    const { exports } = JSON.parse(readFileSync(new URL("../package.json", import.meta.url), "utf8"));
    const offered = Object.keys(exports).filter(
      // Each species and each schema by itself is checked on the packed files, in tests/package.
      (key) => key !== "./package.json" && !/^\.\/(?:species|schemas)\//.test(key),
    );
    expect(offered.map((key) => `moltline${key.slice(1)}`)).toEqual(Object.keys(entries));
  });
});
