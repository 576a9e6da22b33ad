// Writes docs/schemas/*.json.
import { mkdirSync, writeFileSync } from "node:fs";
import { schemaFiles } from "./schemas.ts";

const folder = new URL("../../docs/schemas/", import.meta.url);
mkdirSync(folder, { recursive: true });
for (const { name, text } of await schemaFiles()) writeFileSync(new URL(name, folder), text);
