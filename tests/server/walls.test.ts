import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { present } from '#base/assert.ts';
import { startTestServer, type TestServer } from '#tests/support/test-server.ts';
import { PROCEDURES } from '#tests/support/visitor.ts';
import { checkProcedures } from '../prove/walls/check-procedures.ts';
import { newFindings } from '../prove/walls/findings.ts';
import { PROCEDURE_ROWS } from '../prove/walls/procedure-rows.ts';
import { newCast } from '../prove/walls/world.ts';

// The proof itself runs by `npm run prove`; here it has to show that it can fail.
describe('the proof of the walls', () => {
  let server: TestServer;
  beforeAll(async () => {
    server = await startTestServer('embedded');
  });
  afterAll(() => server.stop());

  it('fails for every procedure without a row, and for a row without a procedure', async () => {
    const findings = newFindings();
    const stray = present(PROCEDURE_ROWS['me.get'], 'me.get has no row');
    await checkProcedures(server, await newCast(server), findings, { 'no.such': stray });
    expect(findings.leaks).toHaveLength(PROCEDURES.size + 1);
    expect(findings.leaks[0]).toContain('no.such has a row');
    expect(findings.leaks[1]).toContain('without a row');
  });

  it('fails when a stranger gets in, and when foreign and missing differ', async () => {
    const findings = newFindings();
    const cast = await newCast(server);
    // A door that does not look who asks: the stranger gets what the lead would.
    const openDoor = { ...cast, 'foreign lead': { ...cast['foreign lead'], call: cast.lead.call } };
    const rename = present(PROCEDURE_ROWS['rigs.rename'], 'rigs.rename has no row');
    await checkProcedures(server, openDoor, findings, { 'rigs.rename': rename });
    expect(findings.leaks).toContain('rigs.rename as foreign lead: ok instead of no-such-rig');
    expect(findings.leaks.some((leak) => leak.includes('tells what is foreign from what is missing'))).toBe(true);
  });
});
