import { setCard } from '#engine/model/card-edits.ts';
import { type Hire, recordOf } from '#engine/model/record.ts';
import { type HireState, hireState } from '#engine/upkeep/hires-due.ts';
import { HOUSE_WORDS } from '#words/house.ts';
import { HIRE_STATE_WORDS, UPKEEP_WORDS as words } from '#words/upkeep.ts';
import { LinkButton } from '../../kit/link-button.tsx';
import { Mark } from '../../kit/mark.tsx';
import { today } from '../../kit/today.ts';
import { AddKind, Named, Remove } from '../../plant/card-line-parts.tsx';
import { type CardColumn, CardList, type CardScene } from '../../plant/card-list.tsx';
import { Part } from '../part.tsx';

const HIRE = { card: 'hire', plan: 'set-hire' } as const;
const COLUMNS: readonly CardColumn[] = [
  { ...HIRE, field: 'count', label: words.hire.count, share: 1 },
  { ...HIRE, field: 'from', label: words.hire.from, share: 2 },
  { ...HIRE, field: 'due', label: words.hire.due, share: 1.5 },
  { ...HIRE, field: 'returned', label: words.hire.returned, share: 1.5 },
  { ...HIRE, field: 'notes', label: words.hire.notes, share: 3 },
];

/** What is hired in: what is not back first, by the day it is due. */
export function HiresPart({ scene }: { readonly scene: CardScene }) {
  const { store, writable } = scene;
  const day = today();
  const hires = recordOf(scene.rig.cards).hires.map((hire) => ({ hire, state: hireState(hire, day) }));
  const sorted = [
    ...hires.filter(({ state }) => state !== 'returned'),
    ...hires.filter(({ state }) => state === 'returned'),
  ];
  const giveBack = ({ id }: Hire) =>
    store.apply({ name: 'set-hire', edits: setCard('hire', id, { returned: today() }) });
  return (
    <Part anchor="hires" title={words.parts.hires}>
      {hires.length === 0 ? <p className="pt-2">{HOUSE_WORDS.none.hire}</p> : null}
      <CardList
        scene={scene}
        name={words.parts.hires}
        head={words.hire.item}
        columns={COLUMNS}
        lines={sorted.map(({ hire, state }) => ({
          of: hire.id,
          name: hire.item,
          lead: (
            <div className="flex items-center gap-2">
              <Named scene={scene} kind="hire" field="item" of={hire.id} name={hire.item} label={words.hire.item} />
              <StateWord state={state} />
            </div>
          ),
          acts: (
            <>
              {writable === 'no' || state === 'returned' ? null : (
                <LinkButton aria-label={words.giveBackOf(hire.item)} onClick={() => giveBack(hire)}>
                  {words.giveBack}
                </LinkButton>
              )}
              <Remove scene={scene} kind="hire" of={hire.id} name={hire.item} />
            </>
          ),
        }))}
      />
      <AddKind scene={scene} kind="hire" />
    </Part>
  );
}

function StateWord({ state }: { readonly state: HireState }) {
  return (
    <span className={`shrink-0 ${state === 'overdue' ? 'font-semibold' : 'text-soft'}`}>
      {state === 'overdue' ? <Mark severity="caution" className="mr-1" /> : null}
      {HIRE_STATE_WORDS[state]}
    </span>
  );
}
