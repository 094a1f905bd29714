import { type ReactNode, useMemo } from 'react';
import type { FixtureId } from '#engine/model/ids.ts';
import { circuitLoads } from '#engine/supply/circuit-loads.ts';
import { positionLoads } from '#engine/supply/position-loads.ts';
import { LOADS_WORDS as words } from '#words/loads.ts';
import type { Sheet } from '../../../grid/sheet.ts';
import { Mark } from '../../../kit/mark.tsx';
import { useCalmRig } from '../../../live/use-calm-rig.ts';
import { Panel } from '../../panel.tsx';
import { CircuitPart } from './circuit-part.tsx';
import { LoadRulesPart } from './load-rules-part.tsx';
import { PositionPart } from './position-part.tsx';
import { useLoadRules } from './use-load-rules.ts';

export interface LoadsPanelProps {
  readonly sheet: Sheet;
  readonly onGo: (fixture: FixtureId) => void;
  readonly onClose: () => void;
}

/** Circuits and positions a list shows; the sheets have all of them. */
const MOST = 200;

/** What each circuit carries and each position holds, as far as the copied types state it; cautions come first. */
export function LoadsPanel({ sheet, onGo, onClose }: LoadsPanelProps) {
  const rig = useCalmRig(sheet.store);
  const [rules, choose] = useLoadRules();
  const circuits = useMemo(() => circuitLoads(rig, rules), [rig, rules]);
  const positions = useMemo(() => positionLoads(rig), [rig]);
  const most = circuits.reduce((amps, load) => Math.max(amps, load.amps), 0);
  const frame = { title: words.title, about: words.about, onClose };
  if (rig.fixtures.size === 0) {
    return (
      <Panel {...frame}>
        <p>{words.none}</p>
      </Panel>
    );
  }
  return (
    <Panel {...frame}>
      <LoadRulesPart rules={rules} onChoose={choose} />
      <Loads title={words.circuits} cautions={words.circuitCautions} more={circuits.length - MOST}>
        <p className="text-soft">{words.noBars}</p>
        <ul className="flex flex-col gap-4">
          {circuits.slice(0, MOST).map((load) => (
            <li key={load.circuit.toLowerCase()} className="flex flex-col gap-1">
              <CircuitPart load={load} rules={rules} most={most} onGo={onGo} />
            </li>
          ))}
        </ul>
      </Loads>
      <Loads title={words.positions} cautions={words.positionCautions} more={positions.length - MOST}>
        <ul className="flex flex-col gap-4">
          {positions.slice(0, MOST).map((load) => (
            <li key={load.position.toLowerCase()} className="flex flex-col gap-1">
              <PositionPart load={load} onGo={onGo} />
            </li>
          ))}
        </ul>
      </Loads>
    </Panel>
  );
}

interface LoadsProps {
  readonly title: string;
  readonly cautions: readonly string[];
  /** How many the list does not show. */
  readonly more: number;
  readonly children: ReactNode;
}

function Loads({ title, cautions, more, children }: LoadsProps) {
  return (
    <section aria-label={title} className="flex flex-col gap-2">
      <h3 className="text-name">{title}</h3>
      {cautions.map((caution) => (
        <p key={caution}>
          <Mark severity="caution" /> {caution}
        </p>
      ))}
      {children}
      {more > 0 ? <p className="text-soft">{words.more(more)}</p> : null}
    </section>
  );
}
