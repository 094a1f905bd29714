import { useId, useState } from 'react';
import type { CardField } from '#engine/model/card.ts';
import type { NetworkNode } from '#engine/model/plant.ts';
import { removeNodePlan } from '#engine/network/network-plans.ts';
import { NETWORK_WORDS as words } from '#words/network.ts';
import { LinkButton } from '../../kit/link-button.tsx';
import { CardCell } from '../../plant/card-cell.tsx';
import { FindingLines } from '../../plant/finding-lines.tsx';
import { ConfirmDialog } from '../confirm-dialog.tsx';
import { isOfNode } from './finding-places.ts';
import { ListenDialog } from './listen-dialog.tsx';
import { PortCells } from './port-cells.tsx';
import type { NetworkView } from './use-network.ts';

export interface DeviceBlockProps {
  readonly view: NetworkView;
  readonly node: NetworkNode;
}

const FIELDS: readonly (readonly [field: CardField<'node'>, heading: string, example?: string])[] = [
  ['name', words.nameCell],
  ['role', words.role],
  ['address', words.address, '2.0.0.1'],
  ['mask', words.mask, '/8'],
  ['ports', words.ports],
  ['together', words.together],
  ['link', words.link, '100'],
  ['position', words.position],
  ['notes', words.notes],
];

/** What takes more room than a number. */
const SPANS: Partial<Readonly<Record<CardField<'node'>, string>>> = { role: 'col-span-2', notes: 'max-sm:col-span-2' };

/** A device: what is known of it, and its ports. */
export function DeviceBlock({ view, node }: DeviceBlockProps) {
  const { store, rig, findings, frozen } = view;
  const [open, setOpen] = useState<'removing' | 'listening'>();
  const id = useId();
  const close = () => setOpen(undefined);
  return (
    <section id={`node-${node.id}`} tabIndex={-1} aria-labelledby={id} className="border-b border-rule-strong py-3">
      <div className="flex flex-wrap items-baseline gap-x-4 gap-y-1">
        <h3 id={id} className="text-name">
          {node.name}
        </h3>
        {frozen ? null : (
          <div className="ml-auto flex flex-wrap gap-x-4">
            {node.ports === 0 ? null : (
              <LinkButton aria-label={words.listenOf(node.name)} onClick={() => setOpen('listening')}>
                {words.listen}
              </LinkButton>
            )}
            <LinkButton aria-label={words.removeOf(node.name)} onClick={() => setOpen('removing')}>
              {words.remove}
            </LinkButton>
          </div>
        )}
      </div>
      <FindingLines
        className="flex flex-col gap-0.5 py-1.5"
        rig={view.rig}
        findings={findings.filter((finding) => isOfNode(finding, node.id))}
      />
      <dl className="grid grid-cols-2 gap-x-3 gap-y-1 sm:grid-cols-[repeat(auto-fill,minmax(7.5rem,1fr))]">
        {FIELDS.map(([field, heading, example]) => (
          <div key={field} className={`min-w-0 ${SPANS[field] ?? ''}`}>
            <dt className="text-small text-soft">{heading}</dt>
            <dd>
              <CardCell
                store={store}
                rig={rig}
                plan="set-network"
                card="node"
                of={node.id}
                field={field}
                name={words.ofNode(node.name, heading)}
                disabled={frozen}
                {...(example === undefined ? {} : { placeholder: example })}
              />
            </dd>
          </div>
        ))}
      </dl>
      <PortCells view={view} node={node} />
      {open === 'listening' ? <ListenDialog view={view} node={node} onClose={close} /> : null}
      {open === 'removing' ? (
        <ConfirmDialog
          title={words.removeTitle(node.name)}
          about={words.removeAbout}
          submit={words.removeIt}
          busy={false}
          refused={undefined}
          onConfirm={() => {
            store.apply(removeNodePlan(store.rig(), node.id));
            close();
          }}
          onClose={close}
        />
      ) : null}
    </section>
  );
}
