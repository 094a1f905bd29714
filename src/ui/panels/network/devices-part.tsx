import { useState } from 'react';
import { randomId } from '#base/random-id.ts';
import type { NetworkNode } from '#engine/model/plant.ts';
import { addNodePlan } from '#engine/network/network-plans.ts';
import { NETWORK_WORDS as words } from '#words/network.ts';
import { Button } from '../../kit/button.tsx';
import { LinkButton } from '../../kit/link-button.tsx';
import { FindingLines } from '../../plant/finding-lines.tsx';
import { AskNameDialog } from '../ask-name-dialog.tsx';
import { Part } from '../part.tsx';
import { DeviceBlock } from './device-block.tsx';
import { isOfSomeDevice } from './finding-places.ts';
import type { NetworkView } from './use-network.ts';

/** Devices drawn at first, and more at each asking: every one has a dozen fields and more. */
const SOME = 24;

/** The devices of the network, each with its ports and what is on them. */
export function DevicesPart({ view }: { readonly view: NetworkView }) {
  const { store, network, findings, frozen } = view;
  const { nodes } = network.plant;
  const [asked, setAsked] = useState(SOME);
  const shown = nodes.slice(0, asked);
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
      <FindingLines
        className="flex flex-col gap-0.5 py-1.5"
        rig={view.rig}
        findings={findings.filter(isOfSomeDevice)}
      />
      {nodes.length === 0 ? <p className="max-w-prose py-2">{words.noDevices}</p> : null}
      {shown.map((node) => (
        <DeviceBlock key={node.id} view={view} node={node} />
      ))}
      {shown.length < nodes.length ? (
        <p className="py-2">
          <LinkButton onClick={() => setAsked(shown.length + SOME)}>
            {words.more(Math.min(SOME, nodes.length - shown.length))}
          </LinkButton>
        </p>
      ) : null}
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
