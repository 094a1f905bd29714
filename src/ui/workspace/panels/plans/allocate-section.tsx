import { useState } from 'react';
import { parseUniverseRanges } from '#engine/address/universe-ranges.ts';
import type { FixtureId } from '#engine/model/ids.ts';
import type { AllocateOptions } from '#engine/patch/allocate/allocate-options.ts';
import { ALLOCATE_WORDS } from '#words/packing.ts';
import type { Sheet } from '../../../grid/sheet.ts';
import { showAllocation } from '../../../grid/show-packing.ts';
import { Button } from '../../../kit/button.tsx';
import { Select } from '../../../kit/select.tsx';
import { TextField } from '../../../kit/text-field.tsx';

const { togetherChoices, breaksChoices, gridChoices } = ALLOCATE_WORDS;

const choicesOf = <Value extends string>(words: Readonly<Record<Value, string>>) =>
  (Object.entries(words) as [Value, string][]).map(([value, label]) => ({ value, label }));

const TOGETHER = choicesOf(togetherChoices);
const BREAKS = choicesOf(breaksChoices);
const GRIDS = Object.entries(gridChoices).map(([value, label]) => ({ value, label }));

export interface AllocateSectionProps {
  readonly sheet: Sheet;
  readonly rows: readonly FixtureId[];
}

/** Finds room for the selected units, as asked; shown before it is carried out. */
export function AllocateSection({ sheet, rows }: AllocateSectionProps) {
  const [together, setTogether] = useState<AllocateOptions['together']>('as-fits');
  const [breaks, setBreaks] = useState<AllocateOptions['breaks']>('in-one-universe');
  const [grid, setGrid] = useState('1');
  const [atEnd, setAtEnd] = useState('0');
  const [afterGroup, setAfterGroup] = useState('0');
  const [only, setOnly] = useState('');
  const [not, setNot] = useState('');
  const allowed = parseUniverseRanges(only);
  const barred = parseUniverseRanges(not);
  const isGrouped = together === 'by-position' || together === 'by-run' || together === 'by-type';
  const isBad = !allowed.ok || !barred.ok || !isSlots(atEnd) || !isSlots(afterGroup);
  const find = () => {
    if (!allowed.ok || !barred.ok) return;
    const spare = { spareAtEnd: Number(atEnd), spareAfterGroup: isGrouped ? Number(afterGroup) : 0 };
    const where = { allowed: allowed.value, barred: barred.value };
    showAllocation(sheet, rows, { together, breaks, grid: Number(grid), ...spare, ...where });
  };
  return (
    <section className="flex flex-col gap-2 border-t border-rule-strong pt-3">
      <h3>{ALLOCATE_WORDS.title}</h3>
      <p className="text-soft">{ALLOCATE_WORDS.about}</p>
      <Select label={ALLOCATE_WORDS.together} choices={TOGETHER} value={together} onChoose={setTogether} />
      <Select label={ALLOCATE_WORDS.breaks} choices={BREAKS} value={breaks} onChoose={setBreaks} />
      <Select label={ALLOCATE_WORDS.grid} choices={GRIDS} value={grid} onChoose={setGrid} />
      <SlotsField label={ALLOCATE_WORDS.atEnd} value={atEnd} onText={setAtEnd} />
      {isGrouped ? <SlotsField label={ALLOCATE_WORDS.afterGroup} value={afterGroup} onText={setAfterGroup} /> : null}
      <TextField
        label={ALLOCATE_WORDS.allowed}
        hint={ALLOCATE_WORDS.allowedHint}
        value={only}
        error={allowed.ok ? undefined : ALLOCATE_WORDS.badUniverses}
        onText={setOnly}
      />
      <TextField
        label={ALLOCATE_WORDS.barred}
        value={not}
        error={barred.ok ? undefined : ALLOCATE_WORDS.badUniverses}
        onText={setNot}
      />
      <div>
        <Button disabled={isBad || rows.length === 0} onClick={find}>
          {ALLOCATE_WORDS.find}
        </Button>
      </div>
    </section>
  );
}

interface SlotsFieldProps {
  readonly label: string;
  readonly value: string;
  readonly onText: (text: string) => void;
}

function SlotsField({ label, value, onText }: SlotsFieldProps) {
  const error = isSlots(value) ? undefined : ALLOCATE_WORDS.badSlots;
  return <TextField label={label} inputMode="numeric" value={value} error={error} onText={onText} />;
}

const isSlots = (text: string) => /^\s*\d{1,3}\s*$/.test(text) && Number(text) < 512;
