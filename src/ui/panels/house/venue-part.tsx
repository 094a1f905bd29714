import { SETUP_KEY } from '#engine/model/card.ts';
import { HOUSE_WORDS as words } from '#words/house.ts';
import { CardCell } from '../../plant/card-cell.tsx';
import type { CardScene } from '../../plant/card-list.tsx';
import { Labelled } from '../../plant/labelled.tsx';
import { Part } from '../part.tsx';

const FIELDS = ['name', 'address', 'entry', 'width', 'depth', 'grid', 'notes'] as const;
const WIDTHS: Readonly<Record<string, string>> = {
  width: 'col-span-1',
  depth: 'col-span-1',
  grid: 'col-span-1',
  notes: 'col-span-full',
};

/** What the house is called, where it is, how one gets in, and the size of its stage. */
export function VenuePart({ scene: { store, rig, writable } }: { readonly scene: CardScene }) {
  return (
    <Part anchor="house" title={words.parts.house}>
      <div className="grid grid-cols-6 gap-3 pt-3 max-sm:grid-cols-3">
        {FIELDS.map((field) => (
          <div key={field} className={WIDTHS[field] ?? 'col-span-3'}>
            <Labelled label={words.venue[field]}>
              <CardCell
                store={store}
                rig={rig}
                plan="set-house"
                card="venue"
                of={SETUP_KEY}
                field={field}
                name={words.cellOf(words.venue[field], words.theHouse)}
                disabled={writable === 'no'}
              />
            </Labelled>
          </div>
        ))}
      </div>
    </Part>
  );
}
