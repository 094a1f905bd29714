import { z } from 'zod';
import { CAPS } from './caps.ts';

/** A name a person typed: 1 to 120 characters on one line, white space tidied. */
export const Name = z
  .string()
  .transform((text) => text.normalize('NFC').replace(/\s+/gu, ' ').trim())
  .pipe(
    z
      .string()
      .min(1, 'A name is missing. Type one.')
      .max(CAPS.nameLength, `A name has at most ${CAPS.nameLength} characters. Shorten it.`)
      .regex(/^[^\p{Cc}\p{Cf}\p{Cs}]*$/u, 'A name has no invisible characters. Type it again.'),
  );
