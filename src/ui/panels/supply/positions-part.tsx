import { useState } from 'react';
import { nameKey } from '#engine/model/card.ts';
import type { Finding } from '#engine/model/finding.ts';
import type { PositionLoad } from '#engine/supply/position-loads.ts';
import { POSITION_CAUTIONS } from '#words/loads.ts';
import { positionRemark, positionText, SUPPLY_WORDS as words } from '#words/supply.ts';
import { LinkButton } from '../../kit/link-button.tsx';
import { CardCell } from '../../plant/card-cell.tsx';
import { Cautions } from '../../plant/cautions.tsx';
import { FindingLines } from '../../plant/finding-lines.tsx';
import { Labelled } from '../../plant/labelled.tsx';
import { PositionBar } from '../../plant/position-bar.tsx';
import { Part } from '../part.tsx';
import { AddLimit } from './add-limit.tsx';
import { CardActs } from './card-acts.tsx';
import { largest, type Scene } from './scene.ts';
import { UnitChips } from './unit-chips.tsx';

/** Positions that are drawn before one asks for all. */
const FIRST = 100;
const FIELDS = ['kilograms', 'extra', 'person', 'on'] as const;

/** What hangs at each position, against what somebody says it may hold. */
export function PositionsPart({ scene }: { readonly scene: Scene }) {
  const [all, setAll] = useState(false);
  const { positions } = scene;
  const scale = largest(positions.map(({ kilograms }) => kilograms));
  return (
    <Part title={words.positions} actions={<AddLimit scene={scene} />}>
      <div className="pt-2">
        <Cautions texts={POSITION_CAUTIONS} />
      </div>
      <ul>
        {(all ? positions : positions.slice(0, FIRST)).map((load) => (
          <li key={load.key} className="border-b border-rule py-2">
            <PositionRow scene={scene} load={load} scale={scale} />
          </li>
        ))}
      </ul>
      {positions.length > FIRST && !all ? (
        <LinkButton onClick={() => setAll(true)}>{words.showAll(positions.length)}</LinkButton>
      ) : null}
    </Part>
  );
}

interface PositionRowProps {
  readonly scene: Scene;
  readonly load: PositionLoad;
  readonly scale: number;
}

function PositionRow({ scene, load, scale }: PositionRowProps) {
  const { key, limit, units } = load;
  const name = key === '' ? words.noPosition : load.position;
  const remark = positionRemark(load);
  return (
    <section
      aria-label={name}
      className="grid grid-cols-[minmax(0,2fr)_minmax(0,3fr)] gap-x-6 gap-y-2 max-lg:grid-cols-1"
    >
      <div className="flex flex-col gap-1">
        <PositionBar load={load} name={name} scale={scale} />
        <p className="text-small text-soft">{positionText(load)}</p>
        {limit === undefined && key !== '' ? (
          <div>
            <AddLimit scene={scene} position={name} />
          </div>
        ) : null}
        {limit === undefined ? null : (
          <div>
            <CardActs scene={scene} card="limit" of={key} name={name} />
          </div>
        )}
      </div>
      <div className="flex min-w-0 flex-col gap-2">
        {limit === undefined ? null : (
          <div className="grid grid-cols-4 gap-2 max-sm:grid-cols-2">
            {FIELDS.map((field) => (
              <Labelled key={field} label={words.cells[field]}>
                <CardCell
                  store={scene.store}
                  rig={scene.rig}
                  plan="set-limit"
                  card="limit"
                  of={key}
                  field={field}
                  name={words.cellOf(words.cells[field], name)}
                  disabled={scene.writable === 'no'}
                />
              </Labelled>
            ))}
          </div>
        )}
        <UnitChips
          scene={scene}
          units={units.map(({ fixture }) => fixture)}
          called={key === '' ? 'name' : 'number'}
          none={words.nothingHangs}
        />
        <FindingLines rig={scene.rig} findings={scene.findings.filter((finding) => isOfLimit(finding, key))} />
        {remark === undefined ? null : <p className="text-small text-soft">{remark}</p>}
      </div>
    </section>
  );
}

/** Two units in one place are no matter of weight. */
const isOfLimit = (finding: Finding, key: string) =>
  'position' in finding && finding.rule !== 'same-place' && nameKey(finding.position) === key;
