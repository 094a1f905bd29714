import { useVirtualizer } from '@tanstack/react-virtual';
import { useRef } from 'react';
import { getRow } from '#base/table.ts';
import type { Universe } from '#engine/model/address.ts';
import type { Finding } from '#engine/model/finding.ts';
import type { FixtureId } from '#engine/model/ids.ts';
import { RIBBON_WORDS, UNIVERSES_WORDS } from '#words/sheet.ts';
import type { Sheet } from '../../grid/sheet.ts';
import { carryOut } from '../../grid/sheet-actions.ts';
import { useCalmRig } from '../../live/use-calm-rig.ts';
import { RibbonStrip } from '../../universes/ribbon-strip.tsx';
import { useOccupancy } from '../../universes/use-occupancy.ts';
import { Panel } from '../panel.tsx';
import { LineField } from './line-field.tsx';

export interface UniversesPanelProps {
  readonly sheet: Sheet;
  readonly onGo: (fixture: FixtureId) => void;
  readonly onClose: () => void;
}

const LINE = 104;

/** Every universe in use as a ribbon, with its label and the room left in it. */
export function UniversesPanel({ sheet, onGo, onClose }: UniversesPanelProps) {
  const { store } = sheet;
  useCalmRig(store);
  const universes = store.occupancy().universes();
  const free = universes.reduce((sum, universe) => sum + store.occupancy().of(universe).freeSlots, 0);
  const scroller = useRef<HTMLDivElement>(null);
  const virtualizer = useVirtualizer({
    count: universes.length,
    getScrollElement: () => scroller.current,
    estimateSize: () => LINE,
    overscan: 2,
  });
  return (
    <Panel
      title={UNIVERSES_WORDS.title}
      about={UNIVERSES_WORDS.summary(universes.length, free, countUnpatched(store.findings()))}
      size="wide"
      onClose={onClose}
    >
      {universes.length === 0 ? <p>{UNIVERSES_WORDS.none}</p> : null}
      <div ref={scroller} className="min-h-0 flex-1 overflow-y-auto">
        <ul className="relative" style={{ height: virtualizer.getTotalSize() }}>
          {virtualizer.getVirtualItems().map(({ index, start }) => {
            const universe = universes[index];
            if (universe === undefined) return null;
            return (
              <li key={universe} className="absolute inset-x-0" style={{ top: start, height: LINE }}>
                <UniverseLine sheet={sheet} universe={universe} onGo={onGo} />
              </li>
            );
          })}
        </ul>
      </div>
    </Panel>
  );
}

function UniverseLine({
  sheet,
  universe,
  onGo,
}: Pick<UniversesPanelProps, 'sheet' | 'onGo'> & { readonly universe: Universe }) {
  const { store } = sheet;
  const { freeSlots } = useOccupancy(store, universe);
  const label = getRow(store.rig().universes, String(universe))?.label ?? '';
  const write = (text: string) =>
    carryOut(sheet, { name: 'set-universe', edits: [{ kind: 'set-universe', universe, label: text.trim() }] });
  return (
    <div className="grid grid-cols-[4.5rem_1fr] gap-x-2">
      <h3 className="text-name">
        <span className="sr-only">{RIBBON_WORDS.universe} </span>
        {universe}
      </h3>
      <div className="mb-1 flex items-center gap-3">
        <div className="w-64 max-w-full">
          <LineField
            name={UNIVERSES_WORDS.label(universe)}
            placeholder={UNIVERSES_WORDS.labelHint}
            value={label}
            disabled={!store.canEdit()}
            onWrite={write}
          />
        </div>
      </div>
      <span className="text-small text-soft">{RIBBON_WORDS.free(freeSlots)}</span>
      <RibbonStrip store={store} universe={universe} marked={sheet.state().selection?.cursor.row} onGo={onGo} />
    </div>
  );
}

function countUnpatched(findings: readonly Finding[]): number {
  const unpatched = findings.filter(({ rule }) => rule === 'unpatched');
  return new Set(unpatched.flatMap(({ fixtures }) => fixtures)).size;
}
