import { wordsOf } from '#engine/type/fold-words.ts';

export interface ModeHeading {
  readonly name: string;
  /** Slots that it says the mode has. */
  readonly footprint: number | null;
}

const MODE: ReadonlySet<string> = new Set('mode modus modo modalita betriebsart kanalmodus personality'.split(' '));
const SLOTS: ReadonlySet<string> = new Set(
  'ch chs chan channel channels kanal kanale kanalmodus canal canaux canales canali canale voies slot slots'.split(' '),
);
const LONGEST = 80;
const MOST_WORDS = 8;

/** A line that names a mode: `8-channel mode`, `20 CH mode`, `Extended (24 channels)`, `Mode 2: Short`. */
export function readModeHeading(text: string): ModeHeading | undefined {
  if (text.length > LONGEST) return undefined;
  const words = wordsOf(text);
  if (words.length === 0 || words.length > MOST_WORDS) return undefined;
  const hasMode = words.some((word) => MODE.has(word.folded));
  const at = words.findIndex((word, index) => {
    const next = words[index + 1]?.folded === 'dmx' ? words[index + 2] : words[index + 1];
    return /^\d{1,3}$/.test(word.folded) && SLOTS.has(next?.folded ?? '');
  });
  const footprint = at < 0 ? null : Number(words[at]?.folded);
  const closes = at >= 0 && words.length - at <= (words[at + 1]?.folded === 'dmx' ? 3 : 2);
  const leads = /^\d/.test(words[0]?.raw ?? '') && at !== 0;
  if (leads || isSlotLead(text) || (!hasMode && !closes)) return undefined;
  return { name: nameIn(text), footprint };
}

/** `Channel 5 mode` is a row. */
const isSlotLead = (text: string) =>
  /^\W*(?:dmx|(?:dmx[ -]?)?(?:channel|chan|ch|kanal|slot|canal|canale|voie))[ .:#-]{0,3}\d/i.test(text);

const nameIn = (text: string) =>
  text
    .replace(/^[\s*•–—#-]+|[\s:*•–—-]+$/g, '')
    .replace(/^(?:dmx[ -])?(?:mode|modus|modo|betriebsart)\s*[:–-]\s*(?=\S)/i, '');
