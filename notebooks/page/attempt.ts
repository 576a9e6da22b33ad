import { InputError } from "../../src/errors.ts";
import { pageWords } from "./page-words.ts";

/** The outcome of something that bad input can stop: a value, or what is wrong with the input. */
export type Attempt<Value> =
  { readonly value: Value; readonly problem: null } | { readonly value: null; readonly problem: string };

/**
 * The outcome of a call that may refuse its input. Anything but refused input is a fault of ours and thrown
 * on.
 */
export function attempt<Value>(make: () => Value): Attempt<Value> {
  try {
    return { value: make(), problem: null };
  } catch (error) {
    if (error instanceof InputError) return { value: null, problem: pageWords(error) };
    throw error;
  }
}

/** What follows from an outcome; a problem before it is handed on. */
export function given<From, To>(before: Attempt<From>, make: (value: From) => To): Attempt<To> {
  return before.problem === null ? attempt(() => make(before.value)) : before;
}

/** The outcome within an outcome. */
export function flat<Value>(outcome: Attempt<Attempt<Value>>): Attempt<Value> {
  return outcome.problem === null ? outcome.value : outcome;
}
