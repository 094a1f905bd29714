import { createHash } from 'node:crypto';
import type { Sha256 } from '#engine/type/content-hash.ts';

/** Node's SHA-256, as the engine asks for it. */
export const sha256: Sha256 = async (text) => createHash('sha256').update(text, 'utf8').digest('hex');
