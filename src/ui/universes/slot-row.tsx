import { formatAddress } from '#engine/address/notation.ts';
import { absolute } from '#engine/model/address.ts';
import type { FixtureSlot } from '#engine/sheet/fixture-slots.ts';
import type { PinnedUse } from '#engine/type/pin-slots.ts';
import { rangesBeyondName, SLOT_CARD_WORDS, SLOT_WORDS } from '#words/slots.ts';
import { byteWord } from '#words/type-chart.ts';
import { RangeList } from '../panels/library/range-list.tsx';

export interface SlotRowProps {
  readonly slot: FixtureSlot;
  /** Whether its break has an address: a slot of it without one is past the end. */
  readonly placed: boolean;
  readonly look: 'plain' | 'marked';
}

/** One slot of a unit: where it is, and what it does. */
export function SlotRow({ slot: { own, at, uses }, placed, look }: SlotRowProps) {
  const address = at === null ? (placed ? SLOT_CARD_WORDS.pastEnd : '') : formatAddress(absolute(at.universe, at.slot));
  return (
    <tr
      aria-current={look === 'marked' ? 'true' : undefined}
      className={`border-b border-rule align-baseline ${look === 'marked' ? 'bg-selected' : ''}`}
    >
      <td className={at === null ? 'py-1 text-soft' : 'py-1 font-mono text-large font-semibold tabular-nums'}>
        {address}
      </td>
      <th scope="row" className="py-1 pr-3 text-right font-mono font-normal tabular-nums">
        {own}
      </th>
      <td className="py-1 [overflow-wrap:anywhere]">
        {uses === null || uses.length === 0 ? (
          <span className="text-soft">{SLOT_WORDS.does(uses)}</span>
        ) : (
          uses.map((use) => <Use key={JSON.stringify(use)} use={use} />)
        )}
      </td>
    </tr>
  );
}

function Use({ use }: { readonly use: PinnedUse }) {
  return (
    <div>
      <span className="text-large">{SLOT_WORDS.does([use])}</span> <span className="text-soft">{byteWord(use)}</span>
      <p className="text-soft">
        {use.cell === '' ? '' : `${SLOT_CARD_WORDS.cell(use.cell)} · `}
        {SLOT_CARD_WORDS.stands(use.default, use.highlight)}
      </p>
      {rangesBeyondName(use).length === 0 ? null : <RangeList use={use} />}
    </div>
  );
}
