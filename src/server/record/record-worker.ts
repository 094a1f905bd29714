import { type MessagePort, workerData } from 'node:worker_threads';
import { doRecordJob, type RecordJob } from './record-job.ts';

// A thread for one rig at a time: freezing a large one takes a second, in which nobody's edit may wait. `record-workers.ts` starts it.
const port: MessagePort = workerData;
port.on('message', (job: RecordJob) => port.postMessage(doRecordJob(job)));
