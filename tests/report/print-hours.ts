// Prints the generated table of docs/explanation/methods-hours.md.
import { hoursTable, markdownTable } from "./hours.ts";

process.stdout.write(`${markdownTable(hoursTable())}\n`);
