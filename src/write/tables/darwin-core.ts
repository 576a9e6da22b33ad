import { givenList, given } from "../../given.ts";
import { type LogEntry, checkLog, fateOf } from "../../cohort/log.ts";
import { counted } from "../../plain-words.ts";
import type { Note } from "../../notes.ts";
import type { StageId } from "../../species/life-cycle.ts";
import { stageName } from "../../species/stage-names.ts";
import { csvText } from "../layout/csv-table.ts";
import { type SharedPlace, roundedPlace } from "./shared-place.ts";

/**
 * The terms of Darwin Core that are used, in the order of the columns (Biodiversity Information Standards, TDWG;
 * names from memory, each with its URI in fixtures/reference/darwin-core-terms.json).
 */
export const DARWIN_CORE_TERMS = [
  "occurrenceID",
  "basisOfRecord",
  "occurrenceStatus",
  "scientificName",
  "vernacularName",
  "eventDate",
  "individualCount",
  "lifeStage",
  "degreeOfEstablishment",
  "occurrenceRemarks",
  "recordedBy",
  "country",
  "countryCode",
  "stateProvince",
  "locality",
  "decimalLatitude",
  "decimalLongitude",
  "geodeticDatum",
  "coordinateUncertaintyInMeters",
  "coordinatePrecision",
  "dataGeneralizations",
] as const;

/** One observation in the terms of Darwin Core; terms that nothing is known of are empty. */
export type DarwinCoreRow = Readonly<Record<(typeof DARWIN_CORE_TERMS)[number], string>>;

/** What a log does not say of its observations. */
export interface DarwinCoreOptions {
  readonly scientificName: string;
  readonly vernacularName?: string;
  readonly place?: SharedPlace;
  /** Decimals that coordinates are rounded to. Default 2, about a kilometre: homes and rare animals stay hidden. */
  readonly decimals?: number;
  /** Who saw them; several names are separated by ` | `. */
  readonly recordedBy?: string;
  /** Begins every occurrenceID, and makes it one of a kind in the world: a name that nobody else uses. Default `log`. */
  readonly idPrefix?: string;
  /** Whether the animals were under care. Default true: reared animals say little of the wild. */
  readonly captive?: boolean;
}

/** What the standard calls a stage. Instars and the prepupa are larvae; which, the remarks say. */
const LIFE_STAGES: Readonly<Record<StageId, string>> = {
  egg: "egg",
  larva: "larva",
  "instar-1": "larva",
  "instar-2": "larva",
  "instar-3": "larva",
  "instar-4": "larva",
  "instar-5": "larva",
  prepupa: "larva",
  pupa: "pupa",
  adult: "adult",
};

/**
 * Entries of a log as occurrences in the terms of Darwin Core, for somebody who wants to share them. Where the last
 * look without the stage is known, the date is the interval between the two looks.
 * @returns One row for each entry, in the order of the log, and notes on what to think of before sharing.
 * @throws {InputError} What `checkLog` throws; `invalid-number` and `invalid-option` for the place.
 */
export function darwinCoreRows(
  entries: readonly LogEntry[],
  options: DarwinCoreOptions,
): { rows: readonly DarwinCoreRow[]; notes: readonly Note[] } {
  given(options, ["options"], "an object with scientificName", "scientificName");
  const { scientificName, vernacularName = "", recordedBy = "", captive = true, place } = options;
  const { decimals = 2 } = options;
  const spot = place === undefined ? null : roundedPlace(place, decimals);
  const ids = occurrenceIds(checkLog(entries), options);
  const rows = entries.map((entry, i): DarwinCoreRow => ({
    occurrenceID: ids[i] ?? "",
    basisOfRecord: "HumanObservation",
    occurrenceStatus: "present",
    scientificName,
    vernacularName,
    eventDate: eventDateOf(entry),
    individualCount: String(entry.count),
    lifeStage: LIFE_STAGES[entry.stage],
    degreeOfEstablishment: captive ? "captive" : "",
    occurrenceRemarks: remarksOf(entry, captive),
    recordedBy,
    country: place?.country ?? "",
    countryCode: place?.countryCode ?? "",
    stateProvince: place?.stateProvince ?? "",
    locality: place?.locality ?? "",
    decimalLatitude: spot?.latitude ?? "",
    decimalLongitude: spot?.longitude ?? "",
    geodeticDatum: spot === null ? "" : "EPSG:4326",
    coordinateUncertaintyInMeters: String(spot?.uncertaintyMetres ?? ""),
    coordinatePrecision: String(spot?.precision ?? ""),
    dataGeneralizations: spot === null ? "" : `Coordinates rounded to ${counted(decimals, "decimal")}.`,
  }));
  return { rows, notes: place === undefined ? [] : [placeNote(decimals)] };
}

/** Rows of `darwinCoreRows` as CSV with the names of the terms as header. */
export function darwinCoreCsv(rows: readonly DarwinCoreRow[]): string {
  givenList(rows, ["rows"]);
  return csvText(
    DARWIN_CORE_TERMS,
    rows.map((row) => DARWIN_CORE_TERMS.map((term) => row[term])),
  );
}

/**
 * Ids that stay the same when the log is exported again, and when counts or notes are corrected or rows are added
 * below: from the group, the day, the stage and what was seen of it.
 */
function occurrenceIds(
  entries: readonly LogEntry[],
  { scientificName, idPrefix = "log" }: DarwinCoreOptions,
): string[] {
  const seen = new Map<string, number>();
  return entries.map((entry) => {
    const parts = [
      idPrefix,
      slug(scientificName),
      slug(entry.cohort ?? ""),
      entry.on,
      entry.stage,
      fateOf(entry),
    ];
    const id = parts.filter((part) => part !== "").join(":");
    const times = (seen.get(id) ?? 0) + 1;
    seen.set(id, times);
    return times === 1 ? id : `${id}:${times}`;
  });
}

function slug(text: string): string {
  return text
    .trim()
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, "-");
}

/** ISO 8601: a day or time, or two with a solidus between them. */
function eventDateOf(entry: LogEntry): string {
  const { on, notYet } = entry;
  // A stage began between two looks; a death is of the look that found it.
  return notYet === undefined || notYet === on || fateOf(entry) !== "seen" ? on : `${notYet}/${on}`;
}

const FATES = {
  seen: "had begun",
  died: "found dead in this stage",
  lost: "last seen in this stage",
};

function remarksOf(entry: LogEntry, captive: boolean): string {
  const fate = fateOf(entry);
  const between = fate === "seen" && entry.notYet !== undefined ? " between the two dates" : "";
  return [
    `${stageName(entry.stage)}: ${FATES[fate]}${between}`,
    ...(captive ? ["reared under care"] : []),
    ...(entry.cohort === null ? [] : [`group ${entry.cohort}`]),
    ...(entry.note === null ? [] : [entry.note]),
  ].join("; ");
}

function placeNote(decimals: number): Note {
  const metres = ["100 km", "10 km", "1 km", "100 m", "10 m", "1 m", "10 cm"][decimals] ?? "";
  return {
    code: "exact-places",
    message: `The places are told to about ${metres}. Exact places of protected or sought-after animals lead collectors and onlookers to them, and that of a home to its people: ask what the law and the local authority allow to be shared, and round further where in doubt.`,
  };
}
