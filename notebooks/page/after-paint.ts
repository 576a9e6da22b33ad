/** How long a page that is not on the screen, and so is never painted, is waited for, in milliseconds. */
const PATIENCE_MS = 200;

/** Hands a value on once what is ready is on the screen, so that an answer is not kept waiting by what follows it. */
export async function afterPaint<Value>(value: Value): Promise<Value> {
  await new Promise<void>((resolve) => {
    // The frame is painted between its callbacks and the next task.
    requestAnimationFrame(() => setTimeout(resolve));
    setTimeout(resolve, PATIENCE_MS);
  });
  return value;
}
