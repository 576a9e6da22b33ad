import { describe, expect, it } from "vitest";
import { danausPlexippus } from "../../src/species/danaus-plexippus.ts";
import { moltline } from "./in-memory.ts";

const OWN = JSON.stringify({ ...danausPlexippus, species: "own", commonName: "Käfer" });
const HERE = "--constant 25 --species-file own.json --found egg --on 2026-06-08";

describe("a species file", () => {
  it.each([
    ["UTF-8", new TextEncoder().encode(OWN)],
    ["UTF-8 with a mark", new TextEncoder().encode(`\uFEFF${OWN}`)],
    ["Windows-1252", Uint8Array.from(OWN, (letter) => letter.charCodeAt(0))],
  ])("may be in %s", async (_, bytes) => {
    const { out, err } = await moltline(`forecast ${HERE}`, { "own.json": bytes });
    expect(err).toBe("");
    expect(out).toContain("Käfer");
  });

  it("reads an earlier forecast in Windows-1252", async () => {
    const json = (await moltline(`forecast ${HERE} --json`, { "own.json": OWN })).out;
    const log = "stage,seen on,count\nhatched,2026-06-12,4\n";
    const earlier = Uint8Array.from(json, (letter) => letter.charCodeAt(0));
    const files = { "log.csv": log, "earlier.json": earlier };
    const { code, out } = await moltline("compare --log log.csv --forecast earlier.json --json", files);
    expect(code).toBe(0);
    expect(out).not.toContain("\uFFFD");
  });
});
