import { plantOf } from '#engine/model/plant.ts';
import { circuitFeedText, HOUSE_WORDS as words } from '#words/house.ts';
import { CIRCUIT_CAUTIONS } from '#words/loads.ts';
import { StayLink } from '../../kit/stay-link.tsx';
import { LINK_CLASSES } from '../../kit/text-link.tsx';
import { type CardColumn, CardList, type CardScene } from '../../plant/card-list.tsx';
import { Cautions } from '../../plant/cautions.tsx';
import { Part } from '../part.tsx';
import { rigPath } from '../rig/rig-address.ts';

const CIRCUIT = { card: 'circuit', plan: 'set-supply' } as const;
const COLUMNS: readonly CardColumn[] = [
  { ...CIRCUIT, field: 'position', label: words.circuit.position, share: 3 },
  { ...CIRCUIT, field: 'connector', label: words.circuit.connector, share: 3 },
];

/** A house has many; most are looked up, not read through. */
const FIRST = 12;

export interface CircuitsPartProps {
  readonly scene: CardScene;
  readonly rigId: string;
}

/** Circuits: where their outlets are and what fits them, beside what feeds them. */
export function CircuitsPart({ scene, rigId }: CircuitsPartProps) {
  const circuits = [...plantOf(scene.rig.cards).circuits.values()];
  return (
    <Part
      anchor="circuits"
      title={words.parts.circuits}
      about={words.circuitsAbout}
      actions={
        <StayLink className={LINK_CLASSES} href={rigPath(rigId, 'supply')}>
          {words.toSupply}
        </StayLink>
      }
    >
      <div className="pt-2">
        <Cautions texts={CIRCUIT_CAUTIONS} />
      </div>
      {circuits.length === 0 ? <p className="pt-2">{words.noCircuits}</p> : null}
      <CardList
        scene={scene}
        name={words.parts.circuits}
        head={words.circuitName}
        columns={COLUMNS}
        first={FIRST}
        lines={circuits.map((circuit) => ({
          of: circuit.key,
          name: circuit.name,
          lead: (
            <p className="flex flex-wrap gap-x-3">
              <span className="font-medium">{circuit.name}</span>
              <span className="text-soft">{circuitFeedText(circuit)}</span>
            </p>
          ),
        }))}
      />
    </Part>
  );
}
