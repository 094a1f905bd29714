import { randomId } from '#base/random-id.ts';
import type { Sql } from '#server/db/sql.ts';

/** Writes the rows of an empty rig of a crew of its own into a migrated store and answers the id of the rig. */
export async function newRigIn(sql: Sql): Promise<string> {
  const [crew, rig] = [randomId(), randomId()];
  await sql.query('insert into crew (id, name) values ($1, $2)', [crew, 'Testers']);
  await sql.query(`insert into rig (id, crew_id, name, kind) values ($1, $2, $3, 'show')`, [
    rig,
    crew,
    'Rig under test',
  ]);
  return rig;
}

/** The same for an empty, open draft. */
export async function newDraftIn(sql: Sql): Promise<string> {
  const [crew, draft] = [randomId(), randomId()];
  await sql.query('insert into crew (id, name) values ($1, $2)', [crew, 'Testers']);
  await sql.query('insert into type_draft (id, crew_id, created_by) values ($1, $2, $3)', [draft, crew, 'somebody']);
  return draft;
}
