const ENTITIES: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&#39;",
};

/**
 * Text as it may stand in a page, between tags or in a quoted attribute. Control characters, which a page must
 * not have, become blanks.
 * @example
 * htmlText('<b> & "c"') // → "&lt;b&gt; &amp; &quot;c&quot;"
 */
export function htmlText(text: string): string {
  return text
    .replace(/[\u0000-\u001f\u007f-\u009f]/g, " ")
    .replace(/[&<>"']/g, (character) => ENTITIES[character] ?? character);
}
