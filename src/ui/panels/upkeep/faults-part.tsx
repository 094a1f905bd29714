import { useState } from 'react';
import type { FixtureId } from '#engine/model/ids.ts';
import { type Fault, recordOf } from '#engine/model/record.ts';
import { UPKEEP_WORDS as words } from '#words/upkeep.ts';
import { LinkButton } from '../../kit/link-button.tsx';
import type { CardScene } from '../../plant/card-list.tsx';
import { FaultLine } from '../../upkeep/fault-line.tsx';
import { Part } from '../part.tsx';
import { ReportForm } from './report-form.tsx';

export interface UpkeepPartProps {
  readonly scene: CardScene;
  /** Opens everything of one unit. */
  readonly onUnit: (id: FixtureId) => void;
}

/** Faults: a line to report one, those that are open, the oldest first, then those that were mended, the latest first. */
export function FaultsPart({ scene, onUnit }: UpkeepPartProps) {
  const { faults } = recordOf(scene.rig.cards);
  const open = faults.filter(({ state }) => state === 'open');
  const mended = faults.filter(({ state }) => state === 'mended').sort((a, b) => (a.doneOn < b.doneOn ? 1 : -1));
  return (
    <Part anchor="faults" title={words.parts.faults}>
      <ReportForm scene={scene} />
      <h3 className="font-medium">{words.openFaults(open.length)}</h3>
      <Faults scene={scene} faults={open} onUnit={onUnit} first={200} />
      {mended.length === 0 ? null : <h3 className="pt-3 font-medium">{words.mendedFaults(mended.length)}</h3>}
      <Faults scene={scene} faults={mended} onUnit={onUnit} first={20} />
    </Part>
  );
}

interface FaultsProps extends UpkeepPartProps {
  readonly faults: readonly Fault[];
  /** How many are drawn before one asks for all. */
  readonly first: number;
}

function Faults({ scene, faults, onUnit, first }: FaultsProps) {
  const [all, setAll] = useState(false);
  return (
    <>
      <ul>
        {(all ? faults : faults.slice(0, first)).map((fault) => (
          <li key={fault.id} className="border-b border-rule">
            <FaultLine scene={scene} fault={fault} onUnit={onUnit} />
          </li>
        ))}
      </ul>
      {faults.length > first && !all ? (
        <LinkButton onClick={() => setAll(true)}>{words.more(faults.length)}</LinkButton>
      ) : null}
    </>
  );
}
