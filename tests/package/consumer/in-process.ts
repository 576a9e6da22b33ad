import { readFileSync } from "node:fs";
import { danausPlexippus, forecast } from "../../../src/index.ts";
import { readTemperatures } from "../../../src/read/index.ts";
import { calendarText, forecastCsv } from "../../../src/write/index.ts";
import { answer } from "./answer.ts";
import { TEMPERATURES } from "./project.ts";

/** The answer of the sources themselves. */
export function inProcess(): string {
  const library = { forecast, readTemperatures, danausPlexippus, calendarText, forecastCsv };
  return answer(library, readFileSync(TEMPERATURES, "utf8"));
}
