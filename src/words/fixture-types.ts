import { unreachable } from '#base/unreachable.ts';
import type { HazardKind, Hazards } from '#engine/model/fixture-type.ts';
import type { TypeTrouble } from '#engine/type/type-troubles.ts';
import { counted } from './screens.ts';

/** What each hazard is called in a sentence. */
export const HAZARD_NAMES: Readonly<Record<HazardKind, string>> = {
  strobe: 'flashing light',
  ultraviolet: 'ultraviolet light',
  movingParts: 'moving parts',
  fog: 'fog or haze',
  heat: 'hot surfaces',
};

const CAUTIONS: Readonly<Record<HazardKind, string>> = {
  strobe: 'Flashing light can bring on seizures. Warn cast, crew and audience, and follow the rules of the place.',
  ultraviolet: 'Ultraviolet light can harm eyes and skin. Keep the distance and the times its maker states.',
  movingParts: 'It moves without warning. Keep hands, hair and cables clear, and cut its power before working on it.',
  fog: 'Fog and haze hide ways and edges, set off detectors and can trouble breathing. Agree on it with the venue’s fire safety.',
  heat: 'It gets hot. Keep the distance to anything that burns that its maker states, and let it cool before touching it.',
};

const LASER_CAUTION =
  'Laser light can blind, at a distance too. Only a competent person, the laser safety officer where the rules ask for one, may set it up and release it.';

/** Who has the last word, behind every caution. */
export const CAUTION_FOOT =
  'Planning aids only: the maker’s instructions, local codes and the responsible person have the last word.';

/** The usual cautions of a type (common practice), one sentence or two each; none for a type without hazards. */
export function hazardCautions(hazards: Hazards): readonly string[] {
  const kinds = (Object.keys(CAUTIONS) as HazardKind[]).filter((kind) => hazards[kind]);
  const cautions = kinds.map((kind) => CAUTIONS[kind]);
  return hazards.laser === null ? cautions : [`${laserName(hazards.laser)}. ${LASER_CAUTION}`, ...cautions];
}

const laserName = (laser: Hazards['laser'] & string) =>
  laser === 'unknown' ? 'Laser, class not stated: treat it as the most dangerous one' : `Laser of class ${laser}`;

/** What is wrong with a type: where, what, and what to do next. */
export function typeTroubleSentence(trouble: TypeTrouble): string {
  return `Mode “${trouble.mode}”: ${said(trouble)}`;
}

function said(trouble: TypeTrouble): string {
  switch (trouble.kind) {
    case 'mode-named-twice':
      return 'another mode has the same name. Rename one of them.';
    case 'no-slots':
      return 'it has no slots. Add its slots from the manual, or take it out.';
    case 'only-virtual':
      return `it has only virtual channels (${trouble.channels}), so it takes no slot. Check its slots with the manual.`;
    case 'slot-taken-twice':
      return `${slots(trouble.first, trouble.last)} of break ${trouble.break} ${trouble.first === trouble.last ? 'is' : 'are'} taken by ${trouble.channels.map(quoted).join(' and ')}. Check them with the manual.`;
    case 'past-512':
      return `break ${trouble.break} reaches slot ${trouble.last}, and a universe ends at 512. Check its slots with the manual.`;
    case 'break-beyond':
      return `it has a break ${trouble.break}, and a fixture here has four at most. Number its breaks from 1.`;
    case 'unreached':
      return `the channel ${quoted(trouble.channel)} belongs to a part that this mode does not have, so it takes no slot.`;
    case 'channel-named-twice':
      return `${quoted(trouble.channel)} stands on two channels of one part. Give one of them another attribute, or a part of its own.`;
    case 'values-overlap':
      return `${place(trouble)} two things start at value ${trouble.at}. Check the values with the manual.`;
    case 'values-gap':
      return `${place(trouble)} ${values(trouble.from, trouble.to)} not named. Check the values with the manual.`;
    case 'range-outside':
      return `${place(trouble)} a range starts at value ${trouble.at}, which belongs to another function.`;
    default:
      return unreachable(trouble);
  }
}

const quoted = (text: string) => `“${text}”`;

const slots = (first: number, last: number) => (first === last ? `slot ${first}` : `slots ${first} to ${last}`);

const values = (from: number, to: number) => (from === to ? `value ${from} is` : `values ${from} to ${to} are`);

const place = ({ channel, function: name }: { readonly channel: string; readonly function: string | null }) =>
  name === null ? `on ${quoted(channel)}` : `on ${quoted(channel)}, in ${quoted(name)},`;

/** `1 slot`, `27 slots`; of several breaks `4 + 4 slots`. */
export function footprintWords(footprints: readonly number[]): string {
  const [only] = footprints;
  return footprints.length === 1 && only !== undefined ? counted(only, 'slot') : `${footprints.join(' + ') || 0} slots`;
}
