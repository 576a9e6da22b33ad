import { InputError } from "../../src/errors.ts";

/** The InputError that a call throws; anything else thrown, or nothing, fails the test. */
export function refusalOf(call: () => unknown): InputError {
  let result: unknown;
  try {
    result = call();
  } catch (error) {
    if (error instanceof InputError) return error;
    throw error;
  }
  throw new Error(`expected an InputError, but the call returned ${String(result).slice(0, 200)}`);
}

/** All that a refusal says: its code, where the value stood, the value and the sentence. */
export function refusalParts(call: () => unknown): readonly [string, string, unknown, string] {
  const { code, path, value, message } = refusalOf(call);
  return [code, path.join("."), value, message];
}
