import { foldName, positionId } from '#engine/model/ids.ts';
import { POSITIONS_WORDS } from '#words/sheet.ts';
import type { Sheet } from '../../grid/sheet.ts';
import { carryOut } from '../../grid/sheet-actions.ts';
import { Button } from '../../kit/button.tsx';
import { LineField } from '../../kit/line-field.tsx';
import { LinkButton } from '../../kit/link-button.tsx';
import { useCalmRig } from '../../live/use-calm-rig.ts';
import { Panel } from '../panel.tsx';
import { orderPositions, positionsInOrder, positionsInUse, renamePosition } from './position-order.ts';

export interface PositionsPanelProps {
  readonly sheet: Sheet;
  readonly onClose: () => void;
}

/** The positions in the order in which a crew walks them. */
export function PositionsPanel({ sheet, onClose }: PositionsPanelProps) {
  const { store } = sheet;
  const rig = useCalmRig(store);
  const positions = positionsInOrder(rig);
  const { units, unlisted } = positionsInUse(rig);
  const names = positions.map(({ name }) => name);
  const frozen = !store.canEdit();
  const move = (at: number, step: 1 | -1) => {
    const order = [...names];
    order.splice(at + step, 0, ...order.splice(at, 1));
    carryOut(sheet, orderPositions(rig, order));
  };
  const add = (name: string) => carryOut(sheet, orderPositions(rig, [...names, name]));
  const takeOut = (name: string) =>
    carryOut(sheet, { name: 'set-position', edits: [{ kind: 'remove-position', name }] });
  return (
    <Panel title={POSITIONS_WORDS.title} about={POSITIONS_WORDS.about} onClose={onClose}>
      {positions.length === 0 ? <p>{POSITIONS_WORDS.none}</p> : null}
      <ol className="flex flex-col gap-1">
        {positions.map((position, at) => (
          <li key={position.id} className="flex items-center gap-2">
            <LineField
              name={POSITIONS_WORDS.name}
              value={position.name}
              disabled={frozen}
              onWrite={(text) => {
                if (foldName(text) !== '') carryOut(sheet, renamePosition(rig, position, text));
              }}
            />
            <span className="w-16 shrink-0 text-right text-soft">
              {POSITIONS_WORDS.count(units.get(position.id) ?? 0)}
            </span>
            <Button
              aria-label={POSITIONS_WORDS.up(position.name)}
              disabled={frozen || at === 0}
              onClick={() => move(at, -1)}
            >
              ↑
            </Button>
            <Button
              aria-label={POSITIONS_WORDS.down(position.name)}
              disabled={frozen || at === positions.length - 1}
              onClick={() => move(at, 1)}
            >
              ↓
            </Button>
            <LinkButton
              className="shrink-0 whitespace-nowrap"
              aria-label={POSITIONS_WORDS.remove(position.name)}
              disabled={frozen}
              onClick={() => takeOut(position.name)}
            >
              {POSITIONS_WORDS.removeWord}
            </LinkButton>
          </li>
        ))}
      </ol>
      {unlisted.length === 0 ? null : <h3>{POSITIONS_WORDS.unlisted}</h3>}
      <ul className="flex flex-col">
        {unlisted.map((name) => (
          <li key={name} className="flex min-h-control items-center gap-3">
            <span className="flex-1">{name}</span>
            <span className="text-soft">{POSITIONS_WORDS.count(units.get(positionId(name)) ?? 0)}</span>
            <LinkButton aria-label={POSITIONS_WORDS.add(name)} disabled={frozen} onClick={() => add(name)}>
              {POSITIONS_WORDS.addWord}
            </LinkButton>
          </li>
        ))}
      </ul>
    </Panel>
  );
}
