import { element } from "./element.ts";

/** A form of one labelled input. */
export type Field<Value> = HTMLFormElement & { value: Value };

/** What a form can hold. */
type Control = HTMLInputElement | HTMLSelectElement | HTMLTextAreaElement;

let fields = 0;

/** A form of a label and an input, whose value is read from the input whenever that changes. */
export function field<Value, Input extends Control>(
  label: string,
  input: Input,
  read: (input: Input) => Value,
): Field<Value> {
  input.id = `field-${++fields}`;
  const form = element("form", { class: "inputs-field" }, element("label", { for: input.id }, label), input);
  form.addEventListener("submit", (event) => event.preventDefault());
  const filled = Object.assign(form, { value: read(input) });
  // The input hears it before the form does, so whoever listens to the form finds the new value.
  input.addEventListener("input", () => {
    filled.value = read(input);
  });
  return filled;
}
