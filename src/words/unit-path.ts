import { formatPortAddress, isPortAddress } from '#engine/address/port-address.ts';
import type { Delivery, Port } from '#engine/model/plant.ts';
import type { PathRun, UnitPath } from '#engine/network/runs/unit-path.ts';
import { lengthWords, sourceWords } from './run-names.ts';

export const PATH_WORDS = { title: 'The way its data comes', none: 'It is on no run.' } as const;

export interface PathLine {
  readonly name: string;
  readonly text: string;
}

/** The way to a unit, line by line: its universes, its run, and the runs before that. Nothing when nobody has said any of it. */
export function pathLines({ universes, runs, port }: UnitPath): readonly PathLine[] {
  const said = universes.some(({ delivery }) => delivery !== null) || runs.length > 0;
  if (!said) return [];
  return [
    ...universes.map(({ universe, delivery }) => ({ name: `Universe ${universe}`, text: deliveryWords(delivery) })),
    ...runs.map((run, at) => ({
      name: `Run ${run.name}`,
      text: `${placeWords(run, at === 0 ? 'it' : 'the splitter')}; ${beginWords(run, at === runs.length - 1 ? port : undefined)}`,
    })),
  ];
}

/** The number by which a universe travels, and the other ones beside it: they are three things. */
function deliveryWords(delivery: Delivery | null): string {
  if (delivery === null) return 'nobody said how it travels';
  const sacn = delivery.sacn === null ? [] : [`sACN ${delivery.sacn}`];
  const artNet = delivery.portAddress === null ? [] : [`Port-Address ${portAddressWords(delivery.portAddress)}`];
  switch (delivery.by) {
    case 'cable':
      return 'by cable out of the desk';
    case 'sacn':
      return [...(sacn.length === 0 ? ['by sACN, number not said'] : sacn), ...artNet].join(' · ');
    case 'art-net':
      return [...(artNet.length === 0 ? ['by Art-Net, Port-Address not said'] : artNet), ...sacn].join(' · ');
  }
}

const portAddressWords = (number: number) => (isPortAddress(number) ? formatPortAddress(number) : String(number));

/** `3rd of 8, 24 m`. */
function placeWords({ at, of }: PathRun, what: string): string {
  if (at === undefined) return `${what} is not on it`;
  const place = `${ordinal(at.place)} of ${of}`;
  return `${what === 'it' ? '' : `${what} is `}${place}, ${lengthWords(at)}`;
}

function beginWords({ from }: PathRun, port: Port | undefined): string {
  if (from === undefined) return 'nobody has described this run';
  if (from.kind === 'none') return 'where it begins is not said';
  return `from ${sourceWords(from)}${port === undefined ? '' : listensWords(port)}`;
}

function listensWords({ by, number }: Port): string {
  if (by === null || number === null) return '';
  return by === 'sacn' ? `, which listens to sACN ${number}` : `, which listens to ${portAddressWords(number)}`;
}

/** `1st`, `2nd`, `3rd`, `11th`. */
export function ordinal(place: number): string {
  const teen = place % 100 >= 11 && place % 100 <= 13;
  const ending = teen ? 'th' : (['th', 'st', 'nd', 'rd'][place % 10] ?? 'th');
  return `${place}${ending}`;
}
