import { SETUP_KEY } from '#engine/model/card.ts';
import { NETWORK_WORDS as words } from '#words/network.ts';
import { CardCell } from '../../plant/card-cell.tsx';
import type { NetworkView } from './use-network.ts';

/** How this crew relates sACN numbers and Port-Addresses. */
export function ConventionPart({ view }: { readonly view: NetworkView }) {
  const { store, rig, network, frozen } = view;
  const { convention } = network.plant.setup;
  return (
    <div className="flex flex-wrap items-center gap-x-4 gap-y-1">
      <span className="font-medium">{words.convention}</span>
      <div className="w-72 max-sm:w-full">
        <CardCell
          store={store}
          rig={rig}
          plan="set-network"
          card="setup"
          of={SETUP_KEY}
          field="convention"
          name={words.convention}
          disabled={frozen}
        />
      </div>
      <p className="max-w-[46rem] text-soft">{words.conventionAbout[convention ?? 'none']}</p>
    </div>
  );
}
