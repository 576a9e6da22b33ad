import { readFileSync } from "node:fs";
import fc from "fast-check";
import Papa from "papaparse";
import { describe, expect, it } from "vitest";
import { z } from "zod";
import { logEntry } from "../../src/cohort/log.ts";
import { DARWIN_CORE_TERMS, darwinCoreCsv, darwinCoreRows } from "../../src/write/tables/darwin-core.ts";
import { refusalOf } from "../support/refusal.ts";

const standard = z
  .object({
    mark: z.literal("from memory"),
    terms: z.array(z.object({ name: z.string(), class: z.string(), uri: z.string() })),
    basisOfRecord: z.array(z.string()),
  })
  .parse(
    JSON.parse(
      readFileSync(new URL("../../fixtures/reference/darwin-core-terms.json", import.meta.url), "utf8"),
    ),
  );

const SEEN = [
  logEntry({ stage: "instar-3", on: "2026-06-15", count: 4, cohort: "Cage A", note: "one small" }),
  logEntry({ stage: "pupa", on: "2026-06-25T18:30:00", notYet: "2026-06-24T18:00:00", count: 3 }),
  logEntry({ stage: "prepupa", on: "2026-06-24", fate: "died" }),
  logEntry({ stage: "pupa", on: "2026-06-25T18:30:00" }),
];
const NAMED = { scientificName: "Danaus plexippus" };
// An invented place.
const PLACE = { latitude: 40.12345, longitude: -73.98765, uncertaintyMetres: 20, countryCode: "US" };

describe("a log in the terms of Darwin Core", () => {
  it("uses terms of the standard only, and says where each is defined", () => {
    expect(standard.terms.map(({ name }) => name)).toEqual([...DARWIN_CORE_TERMS]);
    for (const { name, uri } of standard.terms) expect(uri).toBe(`http://rs.tdwg.org/dwc/terms/${name}`);
  });

  it("tells stage, count and date, an interval where the look before is known", () => {
    const { rows, notes } = darwinCoreRows(SEEN, NAMED);
    expect(notes).toEqual([]);
    expect(
      rows.map(({ lifeStage, eventDate, individualCount }) => [lifeStage, eventDate, individualCount]),
    ).toEqual([
      ["larva", "2026-06-15", "4"],
      ["pupa", "2026-06-24T18:00:00/2026-06-25T18:30:00", "3"],
      ["larva", "2026-06-24", "1"],
      ["pupa", "2026-06-25T18:30:00", "1"],
    ]);
    expect(rows.map(({ occurrenceRemarks }) => occurrenceRemarks)).toEqual([
      "third instar: had begun; reared under care; group Cage A; one small",
      "pupa: had begun between the two dates; reared under care",
      "prepupa (hanging): found dead in this stage; reared under care",
      "pupa: had begun; reared under care",
    ]);
    for (const row of rows) {
      expect(standard.basisOfRecord).toContain(row.basisOfRecord);
      expect(row.degreeOfEstablishment).toBe("captive");
      expect(row.decimalLatitude + row.geodeticDatum + row.coordinateUncertaintyInMeters).toBe("");
    }
    expect(darwinCoreRows(SEEN, { ...NAMED, captive: false }).rows[0]?.degreeOfEstablishment).toBe("");
  });

  it("dates a death by the day on which it was found, whatever is known of the begin of its stage", () => {
    const dead = logEntry({ stage: "pupa", on: "2026-07-01", notYet: "2026-06-24", fate: "died" });
    const [row] = darwinCoreRows([dead], NAMED).rows;
    expect(row?.eventDate).toBe("2026-07-01");
    expect(row?.occurrenceRemarks).toBe("pupa: found dead in this stage; reared under care");
  });

  it("gives ids that stay when counts and notes change and rows are added below, and are each one of a kind", () => {
    const ids = (entries: typeof SEEN): string[] =>
      darwinCoreRows(entries, { ...NAMED, idPrefix: "garden-7" }).rows.map(
        ({ occurrenceID }) => occurrenceID,
      );
    expect(ids(SEEN)).toEqual([
      "garden-7:danaus-plexippus:cage-a:2026-06-15:instar-3:seen",
      "garden-7:danaus-plexippus:2026-06-25T18:30:00:pupa:seen",
      "garden-7:danaus-plexippus:2026-06-24:prepupa:died",
      "garden-7:danaus-plexippus:2026-06-25T18:30:00:pupa:seen:2",
    ]);
    const later = [...SEEN, logEntry({ stage: "adult", on: "2026-07-05" })];
    expect(ids(later).slice(0, 4)).toEqual(ids(SEEN));
    expect(ids(SEEN.map((one) => ({ ...one, count: 9, note: "changed" })))).toEqual(ids(SEEN));
  });

  it("rounds places to two decimals unless told, and warns", () => {
    const { rows, notes } = darwinCoreRows(SEEN, { ...NAMED, place: PLACE });
    expect(rows[0]).toMatchObject({
      decimalLatitude: "40.12",
      decimalLongitude: "-73.99",
      geodeticDatum: "EPSG:4326",
      coordinatePrecision: "0.01",
      countryCode: "US",
      dataGeneralizations: "Coordinates rounded to 2 decimals.",
    });
    expect(notes.map(({ code }) => code)).toEqual(["exact-places"]);
    expect(notes[0]?.message).toMatch(/about 1 km.*law/);
    const far = darwinCoreRows(SEEN, { ...NAMED, place: PLACE, decimals: 1 });
    expect(far.rows[0]?.dataGeneralizations).toBe("Coordinates rounded to 1 decimal.");
    const exact = darwinCoreRows(SEEN, { ...NAMED, place: PLACE, decimals: 5 });
    expect(exact.rows[0]?.decimalLatitude).toBe("40.12345");
    expect(exact.notes[0]?.message).toContain("about 1 m.");
  });

  it("the true place lies within the uncertainty told", () => {
    const place = fc.record({
      latitude: fc.double({ min: -90, max: 90, noNaN: true }),
      longitude: fc.double({ min: -179, max: 179, noNaN: true }),
      uncertaintyMetres: fc.double({ min: 1, max: 1000, noNaN: true }),
    });
    fc.assert(
      fc.property(place, fc.nat(6), (spot, decimals) => {
        const [row] = darwinCoreRows(SEEN, { ...NAMED, place: spot, decimals }).rows;
        const told = Number(row?.coordinateUncertaintyInMeters);
        // Haversine on a sphere with the radius of the equator.
        const radians = Math.PI / 180;
        const [lat1, lat2] = [spot.latitude * radians, Number(row?.decimalLatitude) * radians];
        const dLon = (spot.longitude - Number(row?.decimalLongitude)) * radians;
        const a =
          Math.sin((lat1 - lat2) / 2) ** 2 + Math.cos(lat1) * Math.cos(lat2) * Math.sin(dLon / 2) ** 2;
        const moved = 2 * 6_378_137 * Math.asin(Math.sqrt(a));
        expect(told).toBeGreaterThanOrEqual(moved + spot.uncertaintyMetres);
      }),
      { numRuns: 500 },
    );
  });

  it("refuses what no place can have", () => {
    const of = (change: object) =>
      refusalOf(() => darwinCoreRows(SEEN, { ...NAMED, place: { ...PLACE, ...change } }));
    expect(of({ latitude: 91 }).path).toEqual(["place", "latitude"]);
    expect(of({ uncertaintyMetres: 0 }).path).toEqual(["place", "uncertaintyMetres"]);
    expect(of({ countryCode: "usa" }).path).toEqual(["place", "countryCode"]);
    expect(refusalOf(() => darwinCoreRows(SEEN, { ...NAMED, place: PLACE, decimals: 7 })).path).toEqual([
      "decimals",
    ]);
  });

  it("is a table that a general reader takes", () => {
    const { rows } = darwinCoreRows(SEEN, { ...NAMED, place: PLACE });
    const { data, errors, meta } = Papa.parse<Record<string, string>>(darwinCoreCsv(rows), {
      header: true,
      skipEmptyLines: true,
    });
    expect(errors).toEqual([]);
    expect(meta.fields).toEqual([...DARWIN_CORE_TERMS]);
    expect(data).toEqual(rows);
  });
});
