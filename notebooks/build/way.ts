/** A notebook in the order of reading. */
export interface Lesson {
  /** File name without its ending. */
  readonly name: string;
  /** The heading that it begins with. */
  readonly heading: string;
  /** Its idea in one sentence. */
  readonly idea: string;
  /** What a reader should know before. */
  readonly before: string;
  readonly minutes: number;
}

/** The way back to the index, before a notebook. */
export function wayBefore(name: string, lessons: readonly Lesson[]): string {
  const place = lessons.findIndex((lesson) => lesson.name === name);
  return (
    `<nav class="way" aria-label="Notebooks"><a href="index.html">All notebooks</a>` +
    `<span>${place + 1} of ${lessons.length}</span></nav>`
  );
}

/** The way on to the next notebook, after one. */
export function wayAfter(name: string, lessons: readonly Lesson[]): string {
  const place = lessons.findIndex((lesson) => lesson.name === name);
  const next = lessons[place + 1];
  const on =
    next === undefined
      ? `<span>This is the last one.</span>`
      : `<span>Next: <a href="${next.name}.html">${next.heading}</a></span>`;
  return `<nav class="way" aria-label="Next notebook">${on}<a href="index.html">All notebooks</a></nav>`;
}
