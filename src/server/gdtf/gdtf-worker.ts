import { parentPort, workerData } from 'node:worker_threads';
import { type GdtfJob, readFile, writeFile } from './gdtf-job.ts';

// A thread for one file: reading a large one takes seconds, in which nobody's edit may wait. `gdtf-workers.ts` starts it.
const job: GdtfJob = workerData;
if (job.kind === 'read') parentPort?.postMessage(await readFile(job.bytes, job.name));
else parentPort?.postMessage(writeFile(job.content));
