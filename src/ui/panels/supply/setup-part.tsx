import { getRow } from '#base/table.ts';
import { cardId, SETUP_KEY } from '#engine/model/card.ts';
import { setCard } from '#engine/model/card-edits.ts';
import { CONTINUOUS_SHARE, FIRST_RULES, NOMINAL_VOLTAGES } from '#engine/supply/load-rules.ts';
import { SUPPLY_WORDS as words } from '#words/supply.ts';
import { BareSelect } from '../../kit/select.tsx';
import { CardCell } from '../../plant/card-cell.tsx';
import { Labelled } from '../../plant/labelled.tsx';
import { Part } from '../part.tsx';
import type { Scene } from './scene.ts';

const VOLTS = 'nominal-volts';

/** By which rules loads are reckoned: chosen by a person, never guessed from where they are. */
export function SetupPart({ scene }: { readonly scene: Scene }) {
  const { store, rig, writable } = scene;
  const cell = { store, rig, plan: 'set-supply', card: 'setup', of: SETUP_KEY, disabled: writable === 'no' } as const;
  return (
    <Part title={words.setup} about={words.choose}>
      <datalist id={VOLTS}>
        {NOMINAL_VOLTAGES.map((volts) => (
          <option key={volts} value={volts} />
        ))}
      </datalist>
      <div className="grid grid-cols-3 gap-3 pt-3 max-sm:grid-cols-1">
        <Labelled label={words.volts}>
          <CardCell
            {...cell}
            field="volts"
            name={words.volts}
            placeholder={words.voltsPlaceholder(FIRST_RULES.volts)}
            list={VOLTS}
          />
        </Labelled>
        <Labelled label={words.share}>
          <ShareCell scene={scene} />
        </Labelled>
        <Labelled label={words.rules}>
          <CardCell {...cell} field="rules" name={words.rules} placeholder={words.rulesPlaceholder} />
        </Labelled>
      </div>
    </Part>
  );
}

/** The share in the two ways that are in use; one that somebody stored otherwise is offered as it stands. */
function ShareCell({ scene: { store, rig, writable } }: { readonly scene: Scene }) {
  const stored = getRow(rig.cards, cardId('setup', SETUP_KEY))?.cells.share ?? null;
  const other =
    stored === null || stored === CONTINUOUS_SHARE
      ? []
      : [
          {
            value: 'other',
            label: typeof stored === 'number' ? words.shareOther(stored) : words.shareOdd(stored),
          },
        ];
  const write = (share: number | null) =>
    store.apply({ name: 'set-supply', edits: setCard('setup', SETUP_KEY, { share }) });
  return (
    <BareSelect
      name={words.share}
      disabled={writable === 'no'}
      choices={[{ value: 'all', label: words.shares.all }, { value: 'most', label: words.shares.most }, ...other]}
      value={stored === null ? 'all' : stored === CONTINUOUS_SHARE ? 'most' : 'other'}
      onChoose={(value) => {
        if (value !== 'other') write(value === 'all' ? null : CONTINUOUS_SHARE);
      }}
    />
  );
}
