import { z } from "zod";
import { cited, head, mark, remark, summary } from "./published-parts.ts";

const rearingRow = z.strictObject({
  temperature: z.number(),
  pupaDays: summary,
  doseToPupationDays: summary.nullable(),
  doseToAdultDays: summary.nullable(),
  alive: z.tuple([z.number(), z.number()]).nullable(),
  deformedShare: z.number().nullable(),
  remark,
  mark,
});

const outdoor = z.strictObject({
  ...cited,
  remark,
  pupa: z.array(
    z.strictObject({
      season: z.enum(["summer", "fall"]),
      days: summary,
      meanTemperature: z.number(),
      degreeDays: z.number(),
      degreeDaysAbove10: z.number(),
      cv: z.number().nullable(),
    }),
  ),
  onPlant: z.array(
    z.strictObject({
      season: z.enum(["summer", "fall"]),
      days: z.number(),
      n: z.number(),
      meanTemperature: z.number(),
      degreeDays: z.number(),
      cv: z.number().nullable(),
    }),
  ),
  hindcast: z.array(z.strictObject({ degreeDays: z.number(), biasDays: z.number(), rmseDays: z.number() })),
});

/** monarch-rearing.json. */
export const monarchRearing = z.strictObject({
  ...head,
  constant: z.strictObject({ ...cited, remark, rows: z.array(rearingRow) }),
  pooled: z.strictObject({
    ...cited,
    remark,
    rows: z.array(z.strictObject({ temperature: z.number(), pupaDays: z.number(), n: z.number() })),
  }),
  pupalCv: z.strictObject({
    ...cited,
    remark,
    rows: z.array(
      z.strictObject({ temperature: z.number(), raw: z.number(), corrected: z.number().nullable() }),
    ),
  }),
  outdoor,
  alternating: z.strictObject({
    ...cited,
    what: z.string(),
    rows: z.array(
      z.strictObject({ night: z.number(), day: z.tuple([z.number(), z.number()]), days: z.number() }),
    ),
  }),
  foliage: z.strictObject({
    ...cited,
    remark,
    rows: z.array(z.strictObject({ leaves: z.string(), daysToPupation: summary })),
  }),
});
