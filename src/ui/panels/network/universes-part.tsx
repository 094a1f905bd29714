import { useMemo, useState } from 'react';
import { NETWORK_WORDS as words } from '#words/network.ts';
import { Button } from '../../kit/button.tsx';
import { LinkButton } from '../../kit/link-button.tsx';
import { FindingLines } from '../../plant/finding-lines.tsx';
import { Part } from '../part.tsx';
import { FillDialog } from './fill-dialog.tsx';
import { isOfUniverses } from './finding-places.ts';
import { TableOrCards } from './table-or-cards.tsx';
import { anchoredUniverse } from './universe-anchor.ts';
import { universeColumns } from './universe-columns.tsx';
import type { NetworkView } from './use-network.ts';

/** Rows drawn at first, and more at each asking: every one has half a dozen fields. */
const SOME = 100;

/** How each universe travels. */
export function UniversesPart({ view }: { readonly view: NetworkView }) {
  const { routes, findings, frozen } = view;
  const [filling, setFilling] = useState(false);
  const [asked, setAsked] = useState(SOME);
  const columns = useMemo(() => universeColumns(view), [view]);
  // A link to a row that is not drawn yet draws it.
  const linked = anchoredUniverse();
  const shown = routes.slice(0, Math.max(asked, routes.findIndex(({ universe }) => universe === linked) + 1));
  const fill = frozen ? null : <Button onClick={() => setFilling(true)}>{words.fill}</Button>;
  return (
    <Part title={words.universes} about={words.universesAbout} actions={fill}>
      <FindingLines className="flex flex-col gap-0.5 py-1.5" rig={view.rig} findings={findings.filter(isOfUniverses)} />
      {routes.length === 0 ? <p className="max-w-prose py-2">{words.noUniverses}</p> : null}
      {routes.length === 0 ? null : (
        <TableOrCards
          caption={words.universes}
          columns={columns}
          rows={shown}
          keyOf={({ universe }) => String(universe)}
          idOf={({ universe }) => `card-${universe}`}
          rowName="universe"
        />
      )}
      {shown.length < routes.length ? (
        <p className="py-2">
          <LinkButton onClick={() => setAsked(shown.length + SOME)}>
            {words.more(Math.min(SOME, routes.length - shown.length))}
          </LinkButton>
        </p>
      ) : null}
      {filling ? <FillDialog view={view} onClose={() => setFilling(false)} /> : null}
    </Part>
  );
}
