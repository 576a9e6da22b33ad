import { element } from "./element.ts";
import { type Field, field } from "./field.ts";

/** How long after the last key the text is taken as finished, in milliseconds. */
const PAUSE_MS = 400;

/**
 * A box for the text of a table, whose value is that text as a file, so that it is read as a picked file is; `null`
 * while the box is empty. What is pasted counts at once, what is typed after a short rest, because half a line is
 * no table.
 */
export function paste({ label }: { label: string }): Field<File | null> {
  const box = element("textarea", {
    rows: "3",
    spellcheck: "false",
    autocapitalize: "off",
    autocomplete: "off",
  });
  const form = field(label, box, ({ value }) =>
    value.trim() === "" ? null : new File([value], "pasted.csv", { type: "text/csv" }),
  );
  let waiting: ReturnType<typeof setTimeout> | undefined;
  box.addEventListener("input", (event) => {
    const typed = event instanceof InputEvent && !/Paste|Drop|Cut/.test(event.inputType);
    clearTimeout(waiting);
    if (!typed) return;
    event.stopPropagation();
    waiting = setTimeout(() => form.dispatchEvent(new Event("input")), PAUSE_MS);
  });
  return form;
}
