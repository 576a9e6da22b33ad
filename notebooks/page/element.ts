/** What an element can hold. */
export type Content = Node | string;

/** An element with attributes and contents; text is taken as text, whatever it looks like. */
export function element<Tag extends keyof HTMLElementTagNameMap>(
  tag: Tag,
  attributes: Readonly<Record<string, string>> = {},
  ...contents: readonly Content[]
): HTMLElementTagNameMap[Tag] {
  const made = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) made.setAttribute(name, value);
  made.append(...contents);
  return made;
}
