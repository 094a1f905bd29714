import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';

/**
 * The key of a finding made short: one of a thousand units has a key of ten thousand characters, which may hold any sign at all. By a library, for
 * the browser's own SHA-256 is not there over plain HTTP.
 */
export const blockerKey = (findingKey: string): string => bytesToHex(sha256(utf8ToBytes(findingKey))).slice(0, 32);
