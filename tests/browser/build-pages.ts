import { browserAtHand } from "./browser.ts";
import { buildNotebooks } from "../../notebooks/build/build.ts";

/** Builds the notebooks once, before the first file that opens them. */
export async function setup(): Promise<void> {
  if (browserAtHand()) await buildNotebooks();
}
