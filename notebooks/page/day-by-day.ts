import { addDays, dayNumber } from "../../src/time/civil-day.ts";
import type { Attempt } from "./attempt.ts";
import { element } from "./element.ts";
import type { DaySpan } from "./inputs.ts";

/** How often what is done so far is handed on, in milliseconds: each time figures are drawn again. */
const PAUSE_MS = 400;

/** Something made for each day once, when it is first asked for. */
export function remembered<Value>(make: (day: string) => Value): (day: string) => Value {
  const known = new Map<string, { readonly value: Value }>();
  return (day) => {
    let entry = known.get(day);
    if (entry === undefined) known.set(day, (entry = { value: make(day) }));
    return entry.value;
  };
}

/**
 * Works through days while the page stays usable, and shows how far it has come. Its value is what is done so far; it
 * stops when it is taken out of the page.
 * @param make What a day gives; days that give a problem are left out, as the page shows it elsewhere.
 * @param prepare Done before `make` as a step of its own, so that no step holds up the page for long.
 */
export function dayByDay<Value>(
  days: DaySpan | null,
  make: (day: string) => Attempt<Value>,
  prepare: (day: string) => unknown,
): HTMLElement & { value: readonly Value[] } {
  const count = days === null ? 0 : dayNumber(days.to) - dayNumber(days.from) + 1;
  const bar = element("progress", { max: String(count), value: "0", "aria-label": "Evenings worked out" });
  const text = element("span");
  const done: Value[] = [];
  const form = Object.assign(element("div", { class: "progress" }, text, bar), { value: done.slice() });
  let handedOn = performance.now();
  const finish = (i: number, day: string): void => {
    const made = make(day);
    if (made.problem === null) done.push(made.value);
    bar.value = i + 1;
    text.textContent = `${i + 1} of ${count} evenings are worked out.`;
    bar.hidden = i + 1 === count;
    if (bar.hidden || performance.now() - handedOn > PAUSE_MS) {
      handedOn = performance.now();
      form.value = done.slice();
      form.dispatchEvent(new Event("input"));
    }
  };
  // A timer between two steps lets the page answer in the meantime.
  const begin = (i: number): void => {
    if (days === null || i === count || !form.isConnected) return;
    const day = addDays(days.from, i);
    prepare(day);
    setTimeout(() => {
      finish(i, day);
      setTimeout(begin, 0, i + 1);
    });
  };
  setTimeout(begin, 0, 0);
  return form;
}
