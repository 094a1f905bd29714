import { useState } from 'react';
import { randomId } from '#base/random-id.ts';
import type { NetworkNode } from '#engine/model/plant.ts';
import { addNodePlan } from '#engine/network/network-plans.ts';
import { NETWORK_WORDS as words } from '#words/network.ts';
import { Button } from '../../kit/button.tsx';
import { AskNameDialog } from '../ask-name-dialog.tsx';
import { Part } from '../part.tsx';
import { DeviceBlock } from './device-block.tsx';
import { FindingLines } from './finding-lines.tsx';
import { isOfSomeDevice } from './finding-places.ts';
import type { NetworkView } from './use-network.ts';

/** The devices of the network, each with its ports and what is on them. */
export function DevicesPart({ view }: { readonly view: NetworkView }) {
  const { store, network, findings, frozen } = view;
  const [adding, setAdding] = useState<NetworkNode['role']>();
  const add = (role: NetworkNode['role'], name: string) => {
    store.apply(addNodePlan(randomId(), name.trim(), role));
    setAdding(undefined);
  };
  const actions = frozen ? null : (
    <div className="flex flex-wrap gap-2">
      <Button onClick={() => setAdding('node')}>{words.addNode}</Button>
      <Button onClick={() => setAdding('source')}>{words.addSource}</Button>
    </div>
  );
  return (
    <Part title={words.devices} actions={actions}>
      <p className="max-w-[52rem] pt-1.5 text-soft">{words.devicesAbout}</p>
      <FindingLines findings={findings.filter(isOfSomeDevice)} />
      {network.plant.nodes.length === 0 ? <p className="max-w-prose py-2">{words.noDevices}</p> : null}
      {network.plant.nodes.map((node) => (
        <DeviceBlock key={node.id} view={view} node={node} />
      ))}
      {adding === undefined ? null : (
        <AskNameDialog
          title={(adding === 'node' ? words.addNode : words.addSource).replace('…', '')}
          label={words.nameOf[adding]}
          submit={words.add}
          busy={false}
          refused={undefined}
          onName={(name) => {
            if (name.trim() !== '') add(adding, name);
          }}
          onClose={() => setAdding(undefined)}
        />
      )}
    </Part>
  );
}
