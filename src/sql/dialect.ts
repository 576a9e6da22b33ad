import { InputError, shown } from "../errors.ts";
import { given } from "../given.ts";

/**
 * The three places at which engines read standard SQL differently. Each is one of a few fixed texts, so that
 * nothing a caller hands in becomes SQL.
 */
export interface SqlDialect {
  /**
   * What stands around names: the standard's `"`, or a backtick for engines to which `"` makes a text.
   * Such an engine would compare texts and give no error, so this must be right. Default `double-quote`.
   */
  readonly names?: "double-quote" | "backtick";
  /** Name of the 64-bit floating-point type. Default `DOUBLE PRECISION`, the standard's. */
  readonly double?: (typeof DOUBLE_TYPES)[number];
  /** What is added to a day to make it the next; `1` where days are whole numbers. Default `INTERVAL '1' DAY`. */
  readonly oneDay?: (typeof ONE_DAYS)[number];
}

const QUOTES = { "double-quote": '"', backtick: "`" } as const;
const DOUBLE_TYPES = ["DOUBLE PRECISION", "DOUBLE", "FLOAT64"] as const;
const ONE_DAYS = ["INTERVAL '1' DAY", "INTERVAL '1 DAY'", "INTERVAL 1 DAY", "1"] as const;

/** How an engine's SQL is written: a checked {@link SqlDialect}. @internal */
export interface Writing {
  readonly quote: '"' | "`";
  readonly double: string;
  readonly oneDay: string;
}

/**
 * A dialect with its defaults filled in.
 * @throws {InputError} `invalid-option` for anything but the known texts: types are not there at run time.
 */
export function writingOf(dialect: SqlDialect = {}): Writing {
  given(dialect, ["dialect"], "an object of options");
  const { names = "double-quote", double = DOUBLE_TYPES[0], oneDay = ONE_DAYS[0] } = dialect;
  if (!Object.hasOwn(QUOTES, names)) throw unknown("names", names, Object.keys(QUOTES));
  if (!DOUBLE_TYPES.includes(double)) throw unknown("double", double, DOUBLE_TYPES);
  if (!ONE_DAYS.includes(oneDay)) throw unknown("oneDay", oneDay, ONE_DAYS);
  return { quote: QUOTES[names], double, oneDay };
}

function unknown(field: string, value: unknown, known: readonly string[]): InputError {
  return new InputError(
    "invalid-option",
    `dialect.${field} is ${shown(value)}; it must be one of ${known.join(", ")}.`,
    {
      path: ["dialect", field],
      value,
    },
  );
}
