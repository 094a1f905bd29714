import { type MessagePort, workerData } from 'node:worker_threads';
import { runBehind } from '../threads/run-behind.ts';
import { doRecordJob, type RecordJob } from './record-job.ts';

// A thread for one rig at a time: freezing a large one takes a second, in which nobody's edit may wait. `record-workers.ts` starts it.
runBehind();
const port: MessagePort = workerData;
port.on('message', async (job: RecordJob) => port.postMessage(await doRecordJob(job)));
