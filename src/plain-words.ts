// What sentences are made with, wherever they stand.

/** A text with a capital at its begin, such as a name that begins a sentence. */
export function capitalised(text: string): string {
  return `${text.slice(0, 1).toUpperCase()}${text.slice(1)}`;
}

/** `1 value`, `3 values`. */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}
