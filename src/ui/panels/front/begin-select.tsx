import { MAKE_RIG_WORDS as words } from '#words/front.ts';
import { useRigs } from '../../kit/data/use-rigs.ts';
import { Select } from '../../kit/select.tsx';

export interface BeginSelectProps {
  /** The id of a house rig; empty for a rig that begins empty. */
  readonly value: string;
  readonly onChoose: (rigId: string) => void;
}

/** What a show rig begins as: nothing, or a house rig of my crews. Not asked where there is none. */
export function BeginSelect({ value, onChoose }: BeginSelectProps) {
  const houses = (useRigs().value ?? []).filter(({ kind }) => kind === 'house');
  if (houses.length === 0) return null;
  return (
    <Select
      label={words.begins}
      hint={words.beginsHint}
      choices={[
        { value: '', label: words.empty },
        ...houses.map(({ id, name, venueName }) => ({ value: id, label: words.asHouse(name, venueName) })),
      ]}
      value={value}
      onChoose={onChoose}
    />
  );
}
