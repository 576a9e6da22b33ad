import { element } from "./element.ts";

/** A row as typed. */
export interface TypedRow {
  /** Whether its box is ticked. */
  readonly used: boolean;
  /** Texts of the cells, in the order of the headings. */
  readonly cells: readonly string[];
}

/** A table to type in, whose value is its rows. */
export type TypedTable = HTMLFormElement & { value: readonly TypedRow[] };

/** How long a typing hand may rest before the page follows, in milliseconds. */
const REST_MS = 400;

/**
 * A table to type in, with a box to tick in each row. Rows can be added and taken away, and cells copied from a
 * spreadsheet can be pasted into any cell: they fill the table from there on.
 * @param options.headings One a column.
 * @param options.rows What stands in it at first.
 */
export function typedTable({
  caption,
  headings,
  rows,
}: {
  readonly caption: string;
  readonly headings: readonly string[];
  readonly rows: readonly (readonly string[])[];
}): TypedTable {
  const blank = (): { used: boolean; cells: string[] } => ({ used: true, cells: headings.map(() => "") });
  const state = rows.map((cells) => ({ used: true, cells: headings.map((_, i) => cells[i] ?? "") }));
  const body = element("tbody");
  const add = element("button", { type: "button" }, "Add a row");
  const heads = ["use", ...headings, ""].map((head) =>
    head === "" ? element("td") : element("th", { scope: "col" }, head),
  );
  const grid = element(
    "table",
    { class: "typed" },
    element("caption", {}, caption),
    element("thead", {}, element("tr", {}, ...heads)),
    body,
  );
  const copy = (): TypedRow[] => state.map(({ used, cells }) => ({ used, cells: [...cells] }));
  const form = Object.assign(element("form", { class: "inputs-typed" }, grid, add), { value: copy() });
  let resting: ReturnType<typeof setTimeout> | undefined;
  const tell = (): void => {
    clearTimeout(resting);
    form.value = copy();
    form.dispatchEvent(new Event("input", { bubbles: true }));
  };
  const cellAt = (row: number, column: number): HTMLInputElement | null =>
    body.rows[row]?.querySelectorAll<HTMLInputElement>("input[type=text]")[column] ?? null;

  const paste = (event: ClipboardEvent, row: number, column: number): void => {
    const lines = (event.clipboardData?.getData("text/plain") ?? "").replace(/\s+$/, "").split(/\r\n?|\n/);
    if (lines.length < 2 && !lines[0]?.includes("\t")) return;
    event.preventDefault();
    lines.forEach((line, down) => {
      const target = (state[row + down] ??= blank());
      line.split("\t").forEach((text, across) => {
        if (column + across < headings.length) target.cells[column + across] = text.trim();
      });
    });
    draw();
    cellAt(row, column)?.focus();
    tell();
  };

  const draw = (): void => {
    body.replaceChildren(
      ...state.map((line, row) => {
        const use = element("input", { type: "checkbox", "aria-label": `Use row ${row + 1}` });
        use.checked = line.used;
        use.addEventListener("change", () => {
          line.used = use.checked;
          tell();
        });
        const cells = headings.map((heading, column) => {
          const input = element("input", {
            type: "text",
            inputmode: "decimal",
            autocomplete: "off",
            "aria-label": `${heading}, row ${row + 1}`,
          });
          input.value = line.cells[column] ?? "";
          input.addEventListener("input", () => {
            line.cells[column] = input.value;
            clearTimeout(resting);
            resting = setTimeout(tell, REST_MS);
          });
          input.addEventListener("change", tell);
          input.addEventListener("paste", (event) => paste(event, row, column));
          return element("td", {}, input);
        });
        const remove = element(
          "button",
          { type: "button", "aria-label": `Remove row ${row + 1}`, title: "remove" },
          "×",
        );
        remove.addEventListener("click", () => {
          state.splice(row, 1);
          draw();
          // The keyboard stays where it was: on the row that moved up, or on what is left.
          (body.rows[Math.min(row, state.length - 1)]?.querySelector("button") ?? add).focus();
          tell();
        });
        const head = element("th", { scope: "row" }, element("label", {}, use, ` ${row + 1}`));
        return element("tr", {}, head, ...cells, element("td", {}, remove));
      }),
    );
  };
  add.addEventListener("click", () => {
    state.push(blank());
    draw();
    cellAt(state.length - 1, 0)?.focus();
    tell();
  });
  // Keys in cells are told once the hand rests, not one by one.
  body.addEventListener("input", (event) => event.stopPropagation());
  form.addEventListener("submit", (event) => event.preventDefault());
  draw();
  return form;
}
