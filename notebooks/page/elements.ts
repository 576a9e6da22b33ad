import type { Attempt } from "./attempt.ts";
import { element } from "./element.ts";

/** An element made from what is known, or a line that says where to look when it is not known. */
export function shown<Value>(outcome: Attempt<Value>, make: (value: Value) => Element): Element {
  return outcome.problem === null
    ? make(outcome.value)
    : element("p", { class: "absent" }, "Nothing to show until the message under the choices is settled.");
}

/** What is wrong with the input, each problem once, said aloud at once; an empty element when nothing is. */
export function problems(...outcomes: readonly Attempt<unknown>[]): Element {
  const messages = new Set(outcomes.flatMap(({ problem }) => (problem === null ? [] : [problem])));
  if (messages.size === 0) return element("div");
  return element(
    "div",
    { class: "problem", role: "alert" },
    element("strong", {}, "This cannot be used as it is."),
    ...[...messages].map((message) => paragraph(capital(message))),
  );
}

/** One column of a table: its heading, and its text for a row. */
export type Columns<Row> = Readonly<Record<string, (row: Row) => string>>;

/**
 * A table with a caption, whose first column names the rows.
 * @param options.prose Whether its cells hold sentences, which have to wrap.
 */
export function table<Row>(
  caption: string,
  rows: readonly Row[],
  columns: Columns<Row>,
  { prose = false }: { readonly prose?: boolean } = {},
): Element {
  const heads = Object.keys(columns).map((head) => element("th", { scope: "col" }, head));
  const lines = rows.map((row) => {
    const [first = "", ...others] = Object.values(columns).map((text) => text(row));
    return element(
      "tr",
      {},
      element("th", { scope: "row" }, first),
      ...others.map((text) => element("td", {}, text)),
    );
  });
  // On a narrow screen the table scrolls in its own region, which the keyboard has to reach.
  return element(
    "div",
    { class: prose ? "wide prose" : "wide", tabindex: "0", role: "region", "aria-label": caption },
    element(
      "table",
      {},
      element("caption", {}, caption),
      element("thead", {}, element("tr", {}, ...heads)),
      element("tbody", {}, ...lines),
    ),
  );
}

/** A list of sentences, each with a title where it has one. */
export function list(items: readonly { readonly title?: string; readonly text: string }[]): Element {
  const lines = items.map(({ title, text }) =>
    title === undefined
      ? element("li", {}, text)
      : element("li", {}, element("strong", {}, `${title}.`), ` ${text}`),
  );
  return element("ul", {}, ...lines);
}

/** A paragraph. */
export function paragraph(text: string): Element {
  return element("p", {}, text);
}

/** A text that the reader opens where it is wanted. */
export function folded(title: string, text: string): Element {
  return element("details", {}, element("summary", {}, title), paragraph(text));
}

/** An answer that is worked out when the reader opens it, so that it costs nothing before. */
export function answered(title: string, make: () => string): Element {
  const text = paragraph("");
  const details = element("details", {}, element("summary", {}, title), text);
  details.addEventListener("toggle", () => {
    if (details.open && text.textContent === "") text.textContent = make();
  });
  return details;
}

/** A paragraph that is read aloud when it changes. */
export function spoken(text: string): Element {
  const region = document.getElementById("spoken");
  if (region && region.textContent !== text) region.textContent = text;
  return element("p", { class: "notice" }, text);
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
