import { digests } from "./digest.ts";

// What the process is set to stands beside the digests, so that a test can see that it took.
const { locale, timeZone } = Intl.DateTimeFormat().resolvedOptions();
console.log(JSON.stringify({ locale, timeZone, digests: digests() }));
