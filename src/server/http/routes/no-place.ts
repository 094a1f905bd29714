import { HTTP_SENTENCES } from '#words/http.ts';
import { refusal } from '../json.ts';

/** What somebody hears whose file is not taken because too many are under way: `each` of theirs, or of all. */
export const noPlace = (why: 'each' | 'all', each: number): Response =>
  why === 'each'
    ? refusal(429, 'too-many-files', HTTP_SENTENCES.tooManyFiles(each))
    : refusal(503, 'busy-reading', HTTP_SENTENCES.busyReading);
