import type { Hazards } from '#engine/model/fixture-type.ts';
import { CAUTION_FOOT, hazardCautions } from '#words/fixture-types.ts';
import { TYPE_WORDS } from '#words/library.ts';
import { Mark } from '../../kit/mark.tsx';
import { Part } from '../part.tsx';

/** The usual caution of everything about a type that can hurt; nothing for a type without hazards. */
export function HazardsPart({ hazards }: { readonly hazards: Hazards }) {
  const cautions = hazardCautions(hazards);
  if (cautions.length === 0) return null;
  return (
    <Part title={TYPE_WORDS.hazards}>
      <ul className="flex max-w-prose flex-col gap-1 py-2">
        {cautions.map((caution) => (
          <li key={caution} className="flex gap-2">
            <Mark severity="caution" />
            <span>{caution}</span>
          </li>
        ))}
      </ul>
      <p className="max-w-prose text-soft">{CAUTION_FOOT}</p>
    </Part>
  );
}
