import { format } from "prettier";
import { JSON_SCHEMA_NAMES, jsonSchemas } from "../../src/read/json-schemas.ts";

/** The published schema files, as docs/schemas has them. */
export async function schemaFiles(): Promise<{ readonly name: string; readonly text: string }[]> {
  const schemas = jsonSchemas();
  return Promise.all(
    JSON_SCHEMA_NAMES.map(async (name) => ({
      name: `${name}.json`,
      text: await format(JSON.stringify(schemas[name]), { parser: "json", printWidth: 110 }),
    })),
  );
}
