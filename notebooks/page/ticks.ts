import { element } from "./element.ts";

let groups = 0;

/**
 * Boxes to tick under one label, whose value is the items that are ticked.
 * @param options.ticked Those ticked at first. Default: all.
 */
export function ticks<Item>({
  label,
  items,
  format,
  ticked = items,
}: {
  readonly label: string;
  readonly items: readonly Item[];
  readonly format: (item: Item) => string;
  readonly ticked?: readonly Item[];
}): HTMLFormElement & { value: readonly Item[] } {
  const group = ++groups;
  const boxes = items.map((item, i) => {
    const box = element("input", { type: "checkbox", id: `tick-${group}-${i}` });
    box.checked = ticked.includes(item);
    return box;
  });
  const chosen = (): Item[] => items.filter((_, i) => boxes[i]?.checked === true);
  const lines = items.flatMap((item, i) => {
    const box = boxes[i];
    return box === undefined
      ? []
      : [element("span", {}, box, element("label", { for: box.id }, format(item)))];
  });
  const set = element("fieldset", {}, element("legend", {}, label), ...lines);
  const form = Object.assign(element("form", { class: "inputs-ticks" }, set), { value: chosen() });
  // Heard here before it is heard at the form, so whoever listens to the form finds the new value.
  set.addEventListener("input", () => {
    form.value = chosen();
  });
  form.addEventListener("submit", (event) => event.preventDefault());
  return form;
}
