import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { exportLists } from "./exports.ts";

const API = new URL("../../docs/api", import.meta.url).pathname;

mkdirSync(API, { recursive: true });
for (const [file, text] of Object.entries(exportLists())) writeFileSync(join(API, file), text);
