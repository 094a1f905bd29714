import { dipSwitches, type SwitchVariant } from '#engine/address/dip-switches.ts';
import { formatAddress } from '#engine/address/notation.ts';
import { type Absolute, slotOf } from '#engine/model/address.ts';
import { SWITCH_WORDS as words } from '#words/slots.ts';
import { Mark } from '../kit/mark.tsx';

interface BreakStart {
  readonly part: number;
  readonly start: Absolute;
}

export interface SwitchPictureProps {
  /** Of each break that has one. */
  readonly starts: readonly BreakStart[];
  readonly variant: SwitchVariant;
}

/** How the address switches of a unit stand for its start addresses, large enough to be read with a hand on the unit. */
export function SwitchPicture({ starts, variant }: SwitchPictureProps) {
  if (starts.length === 0) return null;
  return (
    <section>
      <h3 className="text-name">{words.title}</h3>
      <ul>
        {starts.map(({ part, start }) => (
          <li key={part} className="py-1">
            <ForStart start={start} part={starts.length > 1 ? part : null} variant={variant} />
          </li>
        ))}
      </ul>
      <p className="text-soft">
        {words.holds[variant]} {words.check} {starts.length > 1 ? words.several : ''}
      </p>
    </section>
  );
}

interface ForStartProps {
  readonly start: Absolute;
  /** Which break, where the unit has several. */
  readonly part: number | null;
  readonly variant: SwitchVariant;
}

function ForStart({ start, part, variant }: ForStartProps) {
  const switches = dipSwitches(slotOf(start), variant);
  const address = formatAddress(start);
  if (switches === null) {
    return (
      <p>
        <Mark severity="caution" /> {words.of(address, part)}: {words.cannot}
      </p>
    );
  }
  const numbered = switches.map((on, at) => ({ number: at + 1, on }));
  const on = numbered.flatMap(({ number, on: isOn }) => (isOn ? [number] : []));
  return (
    <>
      <p className="flex flex-wrap gap-x-3 text-large">
        <span>{words.of(address, part)}</span>
        <span className="font-semibold">{words.inShort(on)}</span>
      </p>
      <ol aria-label={words.list(words.of(address, part))} className="flex max-w-96 gap-1 py-1">
        {numbered.map((each) => (
          <OneSwitch key={each.number} {...each} />
        ))}
      </ol>
    </>
  );
}

function OneSwitch({ number, on }: { readonly number: number; readonly on: boolean }) {
  return (
    <li className="flex flex-1 flex-col items-center">
      <span className="font-mono text-large">
        <span className="sr-only">{words.one} </span>
        {number}
      </span>
      <span aria-hidden="true" className="relative h-10 w-full max-w-7 border border-ink bg-sheet">
        <span className={`absolute inset-x-1 h-4 border border-ink ${on ? 'top-1 bg-ink' : 'bottom-1 bg-paper'}`} />
      </span>
      <span className={on ? 'text-large font-semibold' : 'text-large text-soft'}>{on ? words.on : words.off}</span>
    </li>
  );
}
