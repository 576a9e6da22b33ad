// Writes docs/species.md, and the tables in docs/explanation/sources.md.
import { readFileSync, writeFileSync } from "node:fs";
import { sourcesTables, speciesPage } from "./species.ts";

const docs = new URL("../../docs/", import.meta.url);
writeFileSync(new URL("species.md", docs), await speciesPage());

const sources = new URL("explanation/sources.md", docs);
const tables = await sourcesTables();
writeFileSync(
  sources,
  readFileSync(sources, "utf8").replace(
    /(<!-- npm run report:species -->\n\n)[\s\S]*?(\n<!-- end of the generated tables -->)/,
    (_, begin: string, end: string) => `${begin}${tables}${end}`,
  ),
);
