import { InputError } from "../../errors.ts";

/**
 * The value of a JSON text.
 * @throws {InputError} `malformed-file` when it is not JSON.
 */
export function jsonValue(text: string): unknown {
  try {
    const value: unknown = JSON.parse(text);
    return value;
  } catch (error) {
    const why = error instanceof Error ? error.message : "it cannot be parsed";
    throw new InputError("malformed-file", `the text is not valid JSON: ${why}.`, { path: ["text"] });
  }
}
