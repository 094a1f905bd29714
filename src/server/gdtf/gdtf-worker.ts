import { type MessagePort, workerData } from 'node:worker_threads';
import { runBehind } from '../threads/run-behind.ts';
import { type GdtfJob, readFile, writeFile } from './gdtf-job.ts';

// A thread for one file at a time: reading a large one takes seconds, in which nobody's edit may wait. `gdtf-workers.ts` starts it.
runBehind();
const port: MessagePort = workerData;
port.on('message', async (job: GdtfJob) => {
  port.postMessage(job.kind === 'read' ? await readFile(job.bytes, job.name) : writeFile(job.content));
});
