import { briere1 } from "./briere-1.ts";
import { briere2 } from "./briere-2.ts";
import { lactin2 } from "./lactin-2.ts";
import { logan6 } from "./logan-6.ts";
import type { RateModel } from "./rate-model.ts";
import { sharpeSchoolfield, sharpeSchoolfieldHot } from "./sharpe-schoolfield.ts";

/** The nonlinear rate models, those with fewer parameters first. */
export const RATE_MODELS: readonly RateModel[] = [
  briere1,
  briere2,
  lactin2,
  logan6,
  sharpeSchoolfieldHot,
  sharpeSchoolfield,
];
