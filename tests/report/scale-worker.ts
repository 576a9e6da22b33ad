// One thread of the report's library part.
import { parentPort, workerData } from "node:worker_threads";
import { streamDays } from "./scale-days.ts";

parentPort?.postMessage(streamDays(Number(workerData)));
