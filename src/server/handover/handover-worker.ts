import { type MessagePort, workerData } from 'node:worker_threads';
import { type HandoverJob, readFile, writeFile } from './handover-job.ts';

// A thread for one file at a time: a large one takes a second, in which nobody's edit may wait. `handover-workers.ts` starts it.
const port: MessagePort = workerData;
port.on('message', async (job: HandoverJob) => {
  port.postMessage(job.kind === 'read' ? await readFile(job.bytes, job.newest) : await writeFile(job.handover));
});
