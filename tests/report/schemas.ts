import { format } from "prettier";
import * as z from "zod/mini";
import { forecastShape } from "../../src/read/json/forecast-shape.ts";
import { lifeCycleShape } from "../../src/read/json/life-cycle.ts";
import { logShape } from "../../src/read/log/log-entries.ts";
import { temperaturesShape } from "../../src/read/temperatures/temperatures-json.ts";

// What the readers check with, so that the published schemas cannot say anything else.
const SCHEMAS = {
  temperatures: [temperaturesShape, "Temperatures", "In °C, or in the unit named."],
  "life-cycle": [lifeCycleShape, "Life cycle", "A species: stages, constants and where each comes from."],
  log: [logShape, "Log", "What was seen, one entry for each observation."],
  forecast: [forecastShape, "Forecast", "When each later stage begins: early, expected and late."],
} as const;

/** Name of a published schema, without `.json`. */
export type SchemaName = keyof typeof SCHEMAS;

/** The published schema files (JSON Schema, draft 2020-12), as docs/schemas has them. */
export async function schemaFiles(): Promise<{ readonly name: string; readonly text: string }[]> {
  return Promise.all(
    Object.entries(SCHEMAS).map(async ([name, [shape, title, description]]) => {
      const { $schema, ...rest } = z.toJSONSchema(shape, { target: "draft-2020-12", io: "input" });
      const schema = JSON.stringify({ $schema, title, description, ...rest });
      return { name: `${name}.json`, text: await format(schema, { parser: "json", printWidth: 110 }) };
    }),
  );
}
