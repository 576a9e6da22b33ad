import { element } from "./element.ts";
import { type Field, field } from "./field.ts";

/**
 * A list of the world's time zones, which begins on that of the browser. Its lines are made as they are: made from
 * templates, its four hundred lines take as long as a figure.
 */
export function zone({ label }: { label: string }): Field<string> {
  const here = Intl.DateTimeFormat().resolvedOptions().timeZone;
  const names = new Set([here, ...Intl.supportedValuesOf("timeZone")]);
  const lines = Array.from(names, (name) => element("option", { value: name }, name));
  return field(label, element("select", {}, ...lines), ({ value }) => value);
}
