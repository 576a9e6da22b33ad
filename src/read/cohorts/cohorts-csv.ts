import type { Note } from "../../notes.ts";
import type { AgeGiven } from "../../forecast/question/life-path.ts";
import { cohortColumns } from "./cohort-columns.ts";
import { type CohortRecord, refuseSecondNames, speciesNamed } from "./cohort-record.ts";
import type { Column } from "../table/columns.ts";
import { columnNotes } from "../table/columns.ts";
import { csvTable } from "../table/csv-table.ts";
import { momentsSeen } from "../table/log-moments.ts";
import { neededCells } from "../table/needed-cells.ts";
import { numberCell } from "../table/number-cell.ts";
import type { CohortOptions } from "../options.ts";
import { ROWS, refusal } from "../place.ts";
import { stageOfWord } from "../table/stage-words.ts";

/**
 * Cohorts from a delimited table with a header: `name`, `species`, `found` (the stage, as in a log) and `on` (day or
 * time), and where wanted `count`, `age` (unknown, new, or a share of the stage done) and `cages`.
 * @param plain Text without a byte-order mark.
 * @throws {InputError} with the row, the column, the value and what would be right: `unknown-column`,
 *   `ambiguous-column`, `unknown-species`, `unknown-stage`, `invalid-day`, `ambiguous-date`, `invalid-instant`,
 *   `invalid-found` (no rows; name, count, age, cages), `malformed-file`.
 */
export function readCohortsCsv(
  plain: string,
  { dateOrder, own = [] }: CohortOptions = {},
): { cohorts: readonly CohortRecord[]; notes: readonly Note[] } {
  const table = csvTable(plain, cohortColumns, {
    needed: "the name, species, stage found and day of each cohort",
    example: "name,species,found,on,count",
  });
  const { columns } = table;
  const present = Object.values(columns).filter((column): column is Column => column !== null);
  const { texts, rows } = neededCells(table, present, { location: null, noRows: "invalid-found" });
  const cell = (column: Column | null, i: number): string =>
    column === null ? "" : (texts[present.indexOf(column)]?.[i] ?? "");
  const moments = momentsSeen(
    { on: columns.on, time: null },
    rows.map((row, i) => ({ text: cell(columns.on, i), row })),
    [],
    { dateOrder },
  );
  const cohorts = rows.map((row, i): CohortRecord => {
    const whole = (column: Column | null): number =>
      column === null ? 1 : wholeFrom1(cell(column, i), row, column.header.text);
    const name = cell(columns.name, i);
    if (name === "")
      throw refusal("invalid-found", ROWS, row, columns.name.header.text, name, "each cohort needs a name.");
    const lifeCycle = speciesNamed(cell(columns.species, i), own, ROWS, row, columns.species.header.text);
    const larva = lifeCycle.stages.some(({ stage }) => stage === "larva");
    const age = ageOf(cell(columns.age, i), row, columns.age?.header.text ?? "age");
    return {
      name,
      lifeCycle,
      found: {
        stage: stageOfWord(
          cell(columns.found, i),
          larva ? "larva" : "instar-1",
          row,
          columns.found.header.text,
        ),
        on: moments.on[i] ?? "",
        count: whole(columns.count),
        age,
      },
      cages: whole(columns.cages),
    };
  });
  refuseSecondNames(cohorts, ROWS, rows, columns.name.header.text);
  const counted: Note[] =
    columns.count === null
      ? [
          {
            code: "count-assumed",
            message: "The cohorts have no column of counts; each was taken as one animal.",
          },
        ]
      : [];
  return {
    cohorts,
    notes: [
      ...table.notes,
      ...columnNotes(table.header, { ...columns }, "remark"),
      ...moments.notes,
      ...counted,
    ],
  };
}

// An empty cell is one: one animal, one cage.
function wholeFrom1(text: string, row: number, column: string): number {
  if (text === "") return 1;
  if (/^\d{1,9}$/.test(text) && Number(text) > 0) return Number(text);
  throw refusal("invalid-found", ROWS, row, column, text, "it must be a whole number, 1 or more.");
}

function ageOf(text: string, row: number, column: string): AgeGiven {
  const word = text.toLowerCase();
  if (word === "" || word === "unknown") return "unknown";
  if (word === "new") return "new";
  const share = numberCell(text);
  if (typeof share === "number" && share >= 0 && share <= 1) return share;
  throw refusal(
    "invalid-found",
    ROWS,
    row,
    column,
    text,
    "it must be unknown, new, or the share of the stage done, from 0 to 1.",
  );
}
