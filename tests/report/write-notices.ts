import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { ROOT } from "../package/consumer/project.ts";
import { thirdPartyNotices } from "../package/notices.ts";

writeFileSync(join(ROOT, "docs/third-party.txt"), await thirdPartyNotices());
