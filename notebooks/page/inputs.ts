import { type InputForm, range as bareRange } from "@observablehq/inputs";
import { longDate } from "../../src/plot/index.ts";
import { addDays, dayNumber } from "../../src/time/civil-day.ts";
import { element } from "./element.ts";
import { type Field, field } from "./field.ts";

export * from "@observablehq/inputs";
export { paste } from "./paste.ts";
export { amount, number, temperature } from "./quantity.ts";
export { zone } from "./zone.ts";

/**
 * The library's slider, whose track has no label of its own: it gets that of the number beside it. A number beyond its
 * ends becomes the nearest that it takes, and an emptied box the last one, so that the box never shows what does not
 * count.
 */
export function range(
  extent: readonly [number, number],
  options: { readonly label?: string; readonly value?: number; readonly step?: number } = {},
): InputForm<number> {
  const form = bareRange(extent, options);
  form.querySelector("input[type=range]")?.setAttribute("aria-label", options.label ?? "value");
  const box = form.querySelector<HTMLInputElement>("input[type=number]");
  box?.addEventListener("change", () => {
    if (box.checkValidity()) return;
    form.value = Number.isFinite(box.valueAsNumber) ? box.valueAsNumber : form.value;
    form.dispatchEvent(new Event("input", { bubbles: true }));
  });
  return form;
}

/** A calendar day as ISO text, free of the zones that a `Date` brings along; empty while none is complete. */
export function day({ label, value }: { label: string; value: string }): Field<string> {
  return field(label, element("input", { type: "date", value, required: "" }), (input) => input.value);
}

/** A file that the reader picks; `null` until then, so that a page can begin without one. */
export function file({ label, accept }: { label: string; accept: string }): Field<File | null> {
  return field(label, element("input", { type: "file", accept }), (input) => input.files?.[0] ?? null);
}

/** A box to tick. */
export function check({ label }: { label: string }): Field<boolean> {
  return field(label, element("input", { type: "checkbox" }), (input) => input.checked);
}

/** Days from a first to a last one. */
export interface DaySpan {
  readonly from: string;
  readonly to: string;
}

/**
 * A slider over days, whose value is one of them as ISO text. It stands still, on no day, while there are none.
 * @param options.start Days after the first one on which it begins.
 */
export function dayRange({
  label,
  days,
  start,
}: {
  label: string;
  days: DaySpan | null;
  start: number;
}): Field<string> {
  const last = days === null ? 0 : dayNumber(days.to) - dayNumber(days.from);
  const value = String(Math.min(start, last));
  const slider = element("input", { type: "range", min: "0", max: String(last), step: "1", value });
  slider.disabled = days === null;
  // The day stands beside the slider to be seen, and is the slider's value to those who hear it.
  const shown = element("span", { class: "day", "aria-hidden": "true" });
  const read = (input: HTMLInputElement): string =>
    days === null ? "" : addDays(days.from, Number(input.value));
  const tell = (): void => {
    const day = read(slider);
    shown.textContent = day === "" ? "–" : `${longDate(day)} ${day.slice(0, 4)}`;
    slider.setAttribute("aria-valuetext", shown.textContent);
  };
  slider.addEventListener("input", tell);
  tell();
  const form = field(label, slider, read);
  form.append(shown);
  return form;
}

/**
 * A slider over a list, whose value is one of its items; `null`, and still, while the list is empty.
 * @param options.start The item that it begins on. Default: the first.
 */
export function steps<Item>({
  label,
  items,
  format,
  start,
}: {
  label: string;
  items: readonly Item[];
  format: (item: Item) => string;
  start?: Item | undefined;
}): Field<Item | null> {
  const value = String(Math.max(0, start === undefined ? 0 : items.indexOf(start)));
  const max = String(Math.max(0, items.length - 1));
  const slider = element("input", { type: "range", min: "0", max, step: "1" });
  slider.value = value;
  slider.disabled = items.length === 0;
  const shown = element("span", { class: "day", "aria-hidden": "true" });
  const read = (input: HTMLInputElement): Item | null => items[Number(input.value)] ?? null;
  const tell = (): void => {
    const item = read(slider);
    shown.textContent = item === null ? "–" : format(item);
    slider.setAttribute("aria-valuetext", shown.textContent);
  };
  slider.addEventListener("input", tell);
  tell();
  const form = field(label, slider, read);
  form.append(shown);
  return form;
}
