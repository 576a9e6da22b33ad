// The files of a project that uses the package, as its author would write them.

const LIBRARY = `
import { forecast } from "moltline";
import { readTemperatures } from "moltline/read";
import { danausPlexippus } from "moltline/species/danaus-plexippus";
import { calendarText, forecastCsv } from "moltline/write";
import { answer } from "./answer.js";

const library = { forecast, readTemperatures, danausPlexippus, calendarText, forecastCsv };
export const answered = (csv) => answer(library, csv);
`;

const NODE_MAIN = `
import { readFileSync } from "node:fs";
import { answered } from "./library.js";
process.stdout.write(answered(readFileSync(new URL("public/temperatures.csv", import.meta.url), "utf8")));
`;

const NODE_THREADS = `
import { readFileSync } from "node:fs";
import { Worker, isMainThread, parentPort, workerData } from "node:worker_threads";
if (isMainThread) {
  const csv = readFileSync(new URL("public/temperatures.csv", import.meta.url), "utf8");
  new Worker(new URL(import.meta.url), { workerData: csv }).on("message", (text) => process.stdout.write(text));
} else {
  const { answered } = await import("./library.js");
  parentPort.postMessage(answered(workerData));
}
`;

const PAGE = `<!doctype html>
<meta charset="utf-8" />
<link rel="icon" href="data:," />
<title>A forecast</title>
<script type="module" src="./page.js"></script>
`;

const PAGE_MAIN = `
import { answered } from "./library.js";
const csv = await (await fetch("./temperatures.csv")).text();
const worker = new Worker(new URL("./web-worker.js", import.meta.url), { type: "module" });
worker.onerror = (event) => { window.fromWorker = "failed: " + event.message; };
worker.onmessage = ({ data }) => { window.fromWorker = data; };
worker.postMessage(csv);
window.fromPage = answered(csv);
`;

const WEB_WORKER = `
import { answered } from "./library.js";
onmessage = ({ data }) => postMessage(answered(data));
`;

/** Texts by path inside the project. */
export const CONSUMER_FILES: Readonly<Record<string, string>> = {
  "package.json": JSON.stringify({ name: "consumer", private: true, type: "module" }),
  "library.js": LIBRARY,
  "node-main.js": NODE_MAIN,
  "node-threads.js": NODE_THREADS,
  "index.html": PAGE,
  "page.js": PAGE_MAIN,
  "web-worker.js": WEB_WORKER,
};
