import type { StoreKind } from '#tests/support/store.ts';
import { startTestServer } from '#tests/support/test-server.ts';
import { checkProcedures } from './check-procedures.ts';
import { checkRoutes } from './check-routes.ts';
import { checkSockets } from './check-sockets.ts';
import { type Findings, newFindings } from './findings.ts';
import { newCast } from './world.ts';

/** The whole matrix on a server of its own: every procedure, address and socket message × everybody. */
export async function checkWalls(kind: StoreKind): Promise<Findings> {
  const server = await startTestServer(kind);
  const findings = newFindings();
  try {
    const cast = await newCast(server);
    await checkProcedures(server, cast, findings);
    await checkSockets(server, cast, findings);
    await checkRoutes(server, cast, findings);
    const broken = server.lines.filter((line) => line.includes(' trouble '));
    findings.check(broken.length === 0, `the server reported trouble: ${broken.join(' | ')}`);
    return findings;
  } finally {
    await server.stop();
  }
}
