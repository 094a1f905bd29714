import { slotOf, universeOf } from '#engine/model/address.ts';
import { ADDRESS_FIELDS } from '#engine/model/field.ts';
import type { Fixture } from '#engine/model/fixture.ts';
import { PHONE_WORDS } from '#words/sheet.ts';

/** What to dial and what to choose at the unit: the address of each break that has one, channel, type and mode. */
export function UnitDigits({ fixture }: { readonly fixture: Fixture }) {
  const { channel, type, mode, addresses } = fixture;
  const what = [channel === null ? '' : `${PHONE_WORDS.channel} ${channel}`, type, mode].filter((part) => part !== '');
  return (
    <>
      <p className="text-large">{what.join(' · ')}</p>
      {addresses.length === 0 ? <p className="py-3 text-large text-soft">{PHONE_WORDS.notPatched}</p> : null}
      {addresses.map((start, part) =>
        start === null ? null : (
          <dl key={ADDRESS_FIELDS[part]} className="flex gap-6 pt-3">
            <Figure name={PHONE_WORDS.universe} value={universeOf(start)} />
            <Figure
              name={part === 0 ? PHONE_WORDS.address : PHONE_WORDS.addressOfBreak(part + 1)}
              value={slotOf(start)}
            />
          </dl>
        ),
      )}
    </>
  );
}

function Figure({ name, value }: { readonly name: string; readonly value: number }) {
  return (
    <div>
      <dt className="text-soft">{name}</dt>
      <dd className="text-address font-medium tabular-nums">{value}</dd>
    </div>
  );
}
