import { SHEET_WORDS } from '#words/sheet.ts';
import type { PersonHere } from '../live/link.ts';
import { personLook } from './person-looks.ts';

export interface PersonTagProps {
  readonly person: PersonHere;
  /** `within` leaves room for my own mark, where both of us are in one cell. */
  readonly inset: 'edge' | 'within';
}

/** Somebody else’s mark around the cell they are in, with their name. */
export function PersonTag({ person, inset }: PersonTagProps) {
  const { outline, ground } = personLook(person.colour);
  return (
    <span
      className={`pointer-events-none absolute inset-0 z-[1] font-sans font-normal outline-2 ${outline} ${
        inset === 'edge' ? '-outline-offset-2' : '-outline-offset-4'
      }`}
    >
      <span className={`absolute right-0 bottom-full px-1 text-small leading-4 text-person-ink ${ground}`}>
        <span aria-hidden="true">{person.name}</span>
        <span className="sr-only">{SHEET_WORDS.here(person.name)}</span>
      </span>
    </span>
  );
}
