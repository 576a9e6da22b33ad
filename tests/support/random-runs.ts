import fc from "fast-check";

// The same cases in every run, so that a red run can be repeated. FC_RUNS and FC_SEED widen the search.
const { FC_RUNS, FC_SEED } = process.env;

fc.configureGlobal({
  numRuns: Number(FC_RUNS ?? 100),
  seed: FC_SEED === "random" ? Math.floor(Math.random() * 2 ** 31) : Number(FC_SEED ?? 20260608),
});
