import { useMemo, useState } from 'react';
import { parseUniverseRanges, universesIn } from '#engine/address/universe-ranges.ts';
import type { Universe } from '#engine/model/address.ts';
import { PROTOCOLS, type Protocol } from '#engine/model/card.ts';
import { type FillAsk, fillDeliveries, unsaidUniverses } from '#engine/network/network-plans.ts';
import { NETWORK_WORDS as words } from '#words/network.ts';
import { PROTOCOL_WORDS } from '#words/network-findings.ts';
import { Select } from '../../kit/select.tsx';
import { TextField } from '../../kit/text-field.tsx';
import { PlanDialog } from './plan-dialog.tsx';
import type { NetworkView } from './use-network.ts';

export interface FillDialogProps {
  readonly view: NetworkView;
  readonly onClose: () => void;
}

const BY = PROTOCOLS.map((value) => ({ value, label: PROTOCOL_WORDS[value] }));
/** As many as one reading of the list gives at the most. */
const MOST = 4096;

/** Says of many universes at once how they travel, where nobody has. */
export function FillDialog({ view, onClose }: FillDialogProps) {
  const { store, used } = view;
  const [by, setBy] = useState<Protocol>('sacn');
  const [numbers, setNumbers] = useState<FillAsk['numbers']>('needed');
  const [which, setWhich] = useState('');
  const rig = store.rig();
  const chosen = useMemo(() => readUniverses(which), [which]);
  const plan = useMemo(() => {
    const universes = chosen === undefined || chosen.length === 0 ? unsaidUniverses(rig, used) : chosen;
    return fillDeliveries(rig, { universes: chosen === undefined ? [] : universes, by, numbers });
  }, [rig, used, chosen, by, numbers]);
  return (
    <PlanDialog store={store} title={words.fill.replace('…', '')} plan={plan} onClose={onClose}>
      <Select label={words.travelBy} choices={BY} value={by} onChoose={setBy} />
      <label className="flex min-h-control items-center gap-2">
        <input
          type="checkbox"
          className="size-4 accent-ink"
          checked={numbers === 'both'}
          onChange={(event) => setNumbers(event.currentTarget.checked ? 'both' : 'needed')}
        />
        {words.bothNumbers}
      </label>
      <TextField
        label={words.which}
        hint={words.whichHint}
        error={chosen === undefined ? words.notUniverses : undefined}
        value={which}
        onText={setWhich}
      />
    </PlanDialog>
  );
}

/** The universes that a text names; undefined when it names none that there are, or too many. */
function readUniverses(text: string): readonly Universe[] | undefined {
  const ranges = parseUniverseRanges(text);
  if (!ranges.ok) return undefined;
  const universes: Universe[] = [];
  for (const universe of universesIn(ranges.value)) {
    if (universes.length >= MOST) return undefined;
    universes.push(universe);
  }
  return universes;
}
