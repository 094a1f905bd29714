import type { Universe } from '#engine/model/address.ts';
import { setCard } from '#engine/model/card-edits.ts';
import { NETWORK_WORDS as words } from '#words/network.ts';
import { BareSelect } from '../../kit/select.tsx';
import type { NetworkView } from './use-network.ts';

export interface SenderCellProps {
  readonly view: NetworkView;
  readonly universe: Universe;
  /** The id of a device; empty for none. */
  readonly sender: string;
}

/** Which device sends a universe: sources first. */
export function SenderCell({ view, universe, sender }: SenderCellProps) {
  const { store, network, frozen } = view;
  const sources = network.plant.nodes.filter(({ role }) => role === 'source');
  const others = network.plant.nodes.filter(({ role }) => role !== 'source');
  const choices = [...sources, ...others].map(({ id, name }) => ({ value: id, label: name }));
  const gone = sender !== '' && !network.nodes.has(sender) ? [{ value: sender, label: words.goneSender }] : [];
  return (
    <BareSelect
      name={words.ofUniverse(universe, words.sender)}
      disabled={frozen}
      choices={[{ value: '', label: words.noSender }, ...gone, ...choices]}
      value={sender}
      onChoose={(id) => {
        const edits = setCard('delivery', String(universe), { sender: id === '' ? null : id });
        store.apply({ name: 'set-network', edits });
      }}
    />
  );
}
