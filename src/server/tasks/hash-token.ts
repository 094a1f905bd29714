import { createHash } from 'node:crypto';

/** What is kept of an invitation's token: whoever reads the database cannot join with it. */
export function hashToken(token: string): string {
  return createHash('sha256').update(token).digest('hex');
}
