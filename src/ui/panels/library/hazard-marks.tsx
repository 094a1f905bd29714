import type { Hazards } from '#engine/model/fixture-type.ts';
import { hazardWords } from '#words/library.ts';
import { Mark } from '../../kit/mark.tsx';

/** What can hurt, in a few words behind the sign of a caution; nothing for a type without hazards. */
export function HazardMarks({ hazards }: { readonly hazards: Hazards }) {
  const words = hazardWords(hazards);
  if (words.length === 0) return null;
  return (
    <span>
      <Mark severity="caution" /> {words.join(', ')}
    </span>
  );
}
