import * as z from "zod/mini";
import { forecastShape } from "./forecast-shape.ts";
import { lifeCycleShape } from "./life-cycle.ts";
import { logShape } from "./log-entries.ts";
import { temperaturesShape } from "./temperatures-json.ts";

/** A JSON Schema, draft 2020-12, as plain data. */
export type JsonSchema = Readonly<Record<string, unknown>>;

/** The JSON that this library reads and writes. */
export const JSON_SCHEMA_NAMES = ["temperatures", "life-cycle", "log", "forecast"] as const;

/** Name of a schema. */
export type JsonSchemaName = (typeof JSON_SCHEMA_NAMES)[number];

/**
 * JSON Schemas (draft 2020-12) of the JSON that this library reads and writes: for temperatures, for a life cycle, for
 * a log and for a forecast. They are made from the schemas that the readers check with. A reader refuses more than
 * a schema can say, such as a day that does not exist.
 * @example
 * jsonSchemas().log["type"] // → "array"
 */
export function jsonSchemas(): Readonly<Record<JsonSchemaName, JsonSchema>> {
  return {
    temperatures: made(temperaturesShape, "Temperatures", "In °C, or in the unit named."),
    "life-cycle": made(
      lifeCycleShape,
      "Life cycle",
      "A species: stages, constants and where each comes from.",
    ),
    log: made(logShape, "Log", "What was seen, one entry for each observation."),
    forecast: made(forecastShape, "Forecast", "When each later stage begins: early, expected and late."),
  };
}

function made(shape: z.ZodMiniType, title: string, description: string): JsonSchema {
  const { $schema, ...rest } = z.toJSONSchema(shape, { target: "draft-2020-12", io: "input" });
  return { $schema, title, description, ...rest };
}
