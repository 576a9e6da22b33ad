// Writes docs/accuracy.md.
import { writeFileSync } from "node:fs";
import { format } from "prettier";
import { accuracyPage, accuracyTables } from "./accuracy.ts";

const page = await format(accuracyPage(accuracyTables(1)), { parser: "markdown", printWidth: 110 });
writeFileSync(new URL("../../docs/accuracy.md", import.meta.url), page);
