import type { Note } from "../../notes.ts";

/** What a reader of a fit must know, in the order of weight. @internal */
export function fitNotes(fit: {
  readonly n: number;
  /** Parameters of the curve. */
  readonly count: number;
  readonly exact: boolean;
  readonly atLimit: readonly string[];
  readonly errors: readonly number[] | null;
  readonly converged: boolean;
  readonly fault: string | null;
  /** Of the fitted curve, and the hottest trial, °C. */
  readonly optimum: number;
  readonly hottest: number;
}): Note[] {
  const { n, count, exact, atLimit, errors, converged, fault, optimum, hottest } = fit;
  const notes: Note[] = [];
  if (!converged) {
    notes.push({
      code: "did-not-converge",
      message:
        fault === null
          ? "The search for the least squares did not settle; the parameters are the best that were met and no estimate."
          : `The best parameters that were met do not fit together: ${fault}.`,
    });
  }
  if (atLimit.length > 0) {
    notes.push({
      code: "parameter-at-limit",
      message: `${atLimit.join(" and ")} ended at the limit of where the fit may look: the trials do not say where ${atLimit.length === 1 ? "it lies" : "they lie"}. Standard errors are not given.`,
    });
  } else if (n <= count) {
    notes.push({
      code: "few-trials",
      message: `${n} trials for ${count} parameters: the curve can be led through all of them, and nothing is left over for standard errors.`,
    });
  } else if (errors === null) {
    notes.push({
      code: "few-trials",
      message: "The trials do not tell the parameters apart, so that their standard errors are unknown.",
    });
  }
  if (fault === null && optimum > hottest) {
    notes.push({
      code: "outside-tested-temperatures",
      message: `The curve is fastest at ${optimum.toFixed(1)} °C, above the hottest trial at ${hottest} °C: no trial shows the fall, and the optimum and what lies above it are the model's guess.`,
    });
  }
  if (n <= count + 2) {
    notes.push({
      code: "no-information-criterion",
      message: `There are too few trials for the corrected Akaike criterion: with ${count} parameters and the variance it needs ${count + 3} or more, and there are ${n}.`,
    });
  } else if (exact) {
    notes.push({
      code: "no-information-criterion",
      message: "The curve meets every trial to rounding, where the Akaike criterion has no meaning.",
    });
  }
  return notes;
}
