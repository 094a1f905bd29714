import { useState } from 'react';
import { getRow } from '#base/table.ts';
import type { ModeId } from '#engine/model/ids.ts';
import type { Rig } from '#engine/model/rig.ts';
import { type MoreUnits, needsOfMore } from '#engine/patch/spare/change-needs.ts';
import { modeChoices, moreSentences, NEEDS_WORDS } from '#words/needs.ts';
import { planRefusalSentence } from '#words/plans.ts';
import { Button } from '../../../kit/button.tsx';
import { LinkButton } from '../../../kit/link-button.tsx';
import { Select } from '../../../kit/select.tsx';
import { TextField } from '../../../kit/text-field.tsx';
import type { RigStore } from '../../../live/rig-store.ts';

interface Line {
  /** Its place among them: they come and go at the end. */
  readonly id: number;
  readonly mode: ModeId;
  readonly count: string;
}

export interface MoreNeedsProps {
  readonly store: RigStore;
  readonly rig: Rig;
}

/** Asks what so many more units of one or several modes would need. */
export function MoreNeeds({ store, rig }: MoreNeedsProps) {
  const choices = modeChoices(rig);
  const first = choices[0]?.value;
  const [lines, setLines] = useState<readonly Line[]>([]);
  const [said, setSaid] = useState<readonly string[]>([]);
  if (first === undefined) return <p>{NEEDS_WORDS.noModes}</p>;
  const shown = lines.length === 0 ? [{ id: 0, mode: first, count: '1' }] : lines;
  const put = (next: readonly Line[]) => {
    setLines(next);
    setSaid([]);
  };
  const change = (id: number, part: Partial<Line>) =>
    put(shown.map((line) => (line.id === id ? { ...line, ...part } : line)));
  return (
    <div className="flex flex-col gap-2">
      <h4 className="font-semibold">{NEEDS_WORDS.more}</h4>
      {shown.map((line) => (
        <div key={line.id} className="grid grid-cols-[1fr_7rem] gap-2">
          <Select
            label={NEEDS_WORDS.of}
            choices={choices}
            value={line.mode}
            onChoose={(mode) => change(line.id, { mode })}
          />
          <TextField
            label={NEEDS_WORDS.count}
            inputMode="numeric"
            value={line.count}
            error={isCount(line.count) ? undefined : NEEDS_WORDS.badCount}
            onText={(count) => change(line.id, { count })}
          />
        </div>
      ))}
      <div className="flex flex-wrap gap-x-4">
        <LinkButton onClick={() => put([...shown, { id: shown.length, mode: first, count: '1' }])}>
          {NEEDS_WORDS.another}
        </LinkButton>
        {shown.length > 1 ? <LinkButton onClick={() => put(shown.slice(0, -1))}>{NEEDS_WORDS.fewer}</LinkButton> : null}
      </div>
      <div>
        <Button
          disabled={!shown.every(({ count }) => isCount(count))}
          onClick={() => setSaid(answer(store, wantedOf(store.rig(), shown)))}
        >
          {NEEDS_WORDS.ask}
        </Button>
      </div>
      <div role="status">
        {said.map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
      </div>
    </div>
  );
}

function answer(store: RigStore, wanted: readonly MoreUnits[]): readonly string[] {
  const needs = needsOfMore(store.rig(), wanted, store.occupancy());
  return needs.ok ? moreSentences(needs.value) : [planRefusalSentence(needs.error, store.rig())];
}

function wantedOf(rig: Rig, lines: readonly Line[]): readonly MoreUnits[] {
  return lines.flatMap(({ mode: id, count }) => {
    const mode = getRow(rig.modes, id);
    return mode === undefined ? [] : [{ mode, count: Number(count) }];
  });
}

const isCount = (text: string) => /^\s*\d{1,4}\s*$/.test(text) && Number(text) <= 5000;
