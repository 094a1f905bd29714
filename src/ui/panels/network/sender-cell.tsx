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

/** Which device sends a universe: one of the sources, where there are any. */
export function SenderCell({ view, universe, sender }: SenderCellProps) {
  const { store, network, frozen } = view;
  const sources = network.plant.nodes.filter(({ role }) => role === 'source');
  // Among hundreds of nodes nobody looks for the desk.
  const offered = network.plant.nodes.filter(
    ({ id, role }) => sources.length === 0 || role === 'source' || id === sender,
  );
  const choices = offered.map(({ id, name }) => ({ value: id, label: name }));
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
