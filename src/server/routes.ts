import type { Config } from './config/read-config.ts';
import type { GdtfWorkers } from './gdtf/gdtf-workers.ts';
import type { HandoverWorkers } from './handover/handover-workers.ts';
import type { Route } from './http/api-request.ts';
import { createAttempts } from './http/attempts.ts';
import { archiveInRoute } from './http/routes/archive-in.ts';
import { archiveOutRoute } from './http/routes/archive-out.ts';
import { authRoutes } from './http/routes/auth.ts';
import { demoRoute } from './http/routes/demo.ts';
import { handoverRoute } from './http/routes/handover.ts';
import { handoverFileRoute } from './http/routes/handover-file.ts';
import { handoverUploadRoutes } from './http/routes/handover-upload.ts';
import { healthRoute } from './http/routes/health.ts';
import { momentRoute } from './http/routes/moment.ts';
import { revisionRoute } from './http/routes/revision.ts';
import { sheetRoute } from './http/routes/sheet.ts';
import { trpcRoutes } from './http/routes/trpc.ts';
import { typeFileRoute } from './http/routes/type-file.ts';
import { typeUploadRoute } from './http/routes/type-upload.ts';
import type { SyncService } from './sync/sync-service.ts';
import type { TaskContext } from './tasks/task-context.ts';

export interface RoutesOptions {
  readonly tasks: TaskContext;
  readonly sync: SyncService;
  readonly gdtf: GdtfWorkers;
  readonly handovers: HandoverWorkers;
  readonly version: string;
  readonly config: Pick<Config, 'demo' | 'attemptsPerMinute'>;
  readonly report: (what: string, error: Error) => void;
}

/** Every address below /api. The table in tests/prove/walls.ts has a row for each. */
export function createRoutes({
  tasks,
  sync,
  gdtf,
  handovers,
  version,
  config,
  report,
}: RoutesOptions): readonly Route[] {
  const { store, clock, revoke } = tasks;
  const { demo, attemptsPerMinute } = config;
  return [
    healthRoute({ store, version }),
    ...authRoutes({ revoke }),
    ...trpcRoutes({ tasks, demo, report }),
    demoRoute({ demo, attempts: createAttempts(attemptsPerMinute, clock) }),
    sheetRoute({ store, sync, clock }),
    revisionRoute({ store }),
    momentRoute({ tasks }),
    handoverRoute({ tasks }),
    handoverFileRoute({ tasks, handovers }),
    ...handoverUploadRoutes({ tasks, handovers }),
    typeUploadRoute({ tasks, gdtf }),
    archiveOutRoute({ tasks, version }),
    archiveInRoute({ tasks }),
    typeFileRoute({ store, clock, gdtf }),
  ];
}
