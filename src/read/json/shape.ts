import * as z from "zod/mini";
import {
  InputError,
  type InputErrorCode,
  type InputPath,
  type Wording,
  nearestNames,
  shown,
} from "../../errors.ts";

/**
 * A value in the shape that a schema describes; the one place where zod's findings become an
 * {@link InputError}. One finding is told: its path, the value that stands there, what would be right.
 * @param code `invalid-option` says that the value is not of a file but of the caller, who may call its fields
 *   otherwise.
 * @param what Name of the whole, for a finding about the whole: `the options`.
 * @throws {InputError} with the code given.
 */
export function inShape<Schema extends z.ZodMiniType>(
  schema: Schema,
  value: unknown,
  code: InputErrorCode,
  what: string,
): z.output<Schema> {
  const result = schema.safeParse(value);
  if (result.success) return result.data;
  const { issues } = result.error;
  // A mistyped name leaves its field missing too; the mistyped name is what the caller can see.
  const issue = issues.find(({ code }) => code === "unrecognized_keys") ?? issues[0];
  const path: InputPath = (issue?.path ?? []).map((key) => (typeof key === "number" ? key : String(key)));
  const found = valueAt(value, path);
  // In a bare list the path begins with a number, which alone would not read as a place.
  const place = path.length === 0 ? what : `${typeof path[0] === "number" ? "entry " : ""}${path.join(".")}`;
  const placeIn: Wording = (name) => (code === "invalid-option" ? name(place) : place);
  if (issue?.code === "unrecognized_keys") {
    const key = issue.keys[0] ?? "";
    const near = nearestNames(key, keysAt(schema, path));
    const offer = near.length === 0 ? "leave it out" : `did you mean ${near.join(" or ")}?`;
    throw new InputError(
      code,
      (name) => `${placeIn(name)} has the unknown field ${shown(key)}; ${offer.replace(/[^?]$/, "$&.")}`,
      {
        path: [...path, key],
        value: keyOf(found, key),
      },
    );
  }
  throw new InputError(
    code,
    (name) =>
      `${placeIn(name)} is ${found === undefined ? "missing" : shown(found)}; ${issue ? wanted(issue) : "it has the wrong shape"}.`,
    {
      path,
      value: found,
    },
  );
}

function wanted(issue: z.core.$ZodIssue): string {
  switch (issue.code) {
    case "invalid_type":
      return issue.expected === "nonoptional"
        ? "it must be given"
        : `it must be ${TYPE_WORDS[issue.expected] ?? issue.expected}`;
    case "invalid_value":
      return `it must be ${issue.values.length === 1 ? "" : "one of "}${issue.values.map((one) => shown(one)).join(", ")}`;
    case "too_small":
      return `it must be ${issue.inclusive === false ? "above" : "at least"} ${issue.minimum}`;
    case "too_big":
      return `it must be ${issue.inclusive === false ? "below" : "at most"} ${issue.maximum}`;
    default:
      // Schemas that check a format or refine give their own words.
      return issue.message;
  }
}

const TYPE_WORDS: Readonly<Partial<Record<string, string>>> = {
  string: "a text",
  number: "a finite number",
  boolean: "true or false",
  array: "a list",
  object: "an object",
};

function valueAt(value: unknown, path: InputPath): unknown {
  return path.reduce<unknown>((inside, key) => keyOf(inside, key), value);
}

// Own fields only: a path through a prototype would show something that the caller never wrote.
function keyOf(inside: unknown, key: string | number): unknown {
  if (typeof inside !== "object" || inside === null || !Object.hasOwn(inside, key)) return undefined;
  return Object.getOwnPropertyDescriptor(inside, key)?.value;
}

// Names of the fields that a strict object has at a path, to offer the nearest for a mistyped one.
function keysAt(schema: z.core.$ZodType, path: InputPath): string[] {
  let here: z.core.$ZodType | undefined = unwrapped(schema);
  for (const key of path) {
    if (here instanceof z.ZodMiniArray) here = unwrapped(here.def.element);
    else if (here instanceof z.ZodMiniObject) here = unwrapped(fieldOf(here, key));
  }
  return here instanceof z.ZodMiniObject ? Object.keys(here.shape) : [];
}

function fieldOf(schema: z.ZodMiniObject, key: string | number): z.core.$ZodType | undefined {
  const fields: Readonly<Record<string, z.core.$ZodType>> = schema.shape;
  return Object.entries(fields).find(([name]) => name === key)?.[1];
}

// The schema inside optional and nullable wrappers.
function unwrapped(schema: z.core.$ZodType | undefined): z.core.$ZodType | undefined {
  return schema instanceof z.ZodMiniOptional || schema instanceof z.ZodMiniNullable
    ? unwrapped(schema.def.innerType)
    : schema;
}
