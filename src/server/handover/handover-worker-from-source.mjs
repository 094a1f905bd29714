// While developing, the worker runs from its sources: a thread does not take on how its process reads TypeScript.
import { register } from 'tsx/esm/api';

register();
await import('./handover-worker.ts');
