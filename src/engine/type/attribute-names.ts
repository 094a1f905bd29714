import { ATTRIBUTE_RULES, WORD_MEANINGS } from './attribute-words.ts';
import { foldWord, wordsOf } from './fold-words.ts';
import { readAttribute } from './read-attribute.ts';

const MOST = 12;
const COUNTERS = [1, 2, 3, 4];

/**
 * Attribute names of the standard, to choose from; its counters stand as 1 to 4. Source: GDTF (DIN SPEC 15800), Annex B,
 * extract.
 */
export const attributeNames: readonly string[] = Object.freeze(
  [
    'Dimmer Pan Tilt PanRotate TiltRotate PositionEffect PositionEffectRate PositionEffectFade PositionMSpeed',
    'Gobo# Gobo#Pos Gobo#PosRotate Gobo#SelectSpin Gobo#SelectShake Gobo#WheelIndex Gobo#WheelSpin',
    'AnimationWheel# AnimationWheel#Pos AnimationSystem#',
    'Color# Color#WheelIndex Color#WheelSpin ColorEffects# CTO CTC CTB Tint ColorMacro# ColorMacro#Rate',
    'ColorAdd_R ColorAdd_G ColorAdd_B ColorAdd_C ColorAdd_M ColorAdd_Y ColorAdd_RY ColorAdd_GY ColorAdd_GC ColorAdd_BC',
    'ColorAdd_BM ColorAdd_RM ColorAdd_W ColorAdd_WW ColorAdd_CW ColorAdd_UV',
    'ColorSub_R ColorSub_G ColorSub_B ColorSub_C ColorSub_M ColorSub_Y',
    'HSB_Hue HSB_Saturation HSB_Brightness HSB_Quality CIE_X CIE_Y CIE_Brightness',
    'Shutter# Shutter#Strobe Shutter#StrobePulse Shutter#StrobeRandom StrobeDuration StrobeRate StrobeFrequency',
    'Iris IrisStrobe Frost# Prism# Prism#Pos Prism#PosRotate Effects# BeamShaper',
    'Zoom ZoomModeSpot ZoomModeBeam DigitalZoom Focus# Focus#Adjust Focus#Distance',
    'Blade#A Blade#B Blade#Rot ShaperRot ShaperMacros ShaperMacrosSpeed BladeSoft#A BladeSoft#B KeyStone#A KeyStone#B',
    'Control# Function NoFeature LampControl LampPowerMode FixtureGlobalReset DimmerMode DimmerCurve PanMode TiltMode',
    'Fan# Fog# Haze# Blower#',
    'XYZ_X XYZ_Y XYZ_Z Rot_X Rot_Y Rot_Z Scale_X Scale_Y Scale_Z Scale_XYZ',
    'MediaFolder# MediaContent# ModelFolder# ModelContent# Playmode PlayBegin PlayEnd PlaySpeed',
    'Video FieldOfView InputSource VideoBlendMode VideoSoundVolume#',
  ]
    .flatMap((line) => line.split(' '))
    .flatMap((name) => (name.includes('#') ? COUNTERS.map((counter) => name.replace('#', String(counter))) : [name])),
);

/**
 * Attribute names that a text may mean, the best first, at most 12: what its words say, names that begin with it or hold
 * it, then what a word begun means (`schw` finds Pan). None for an empty text.
 */
export function suggestAttributes(text: string): readonly string[] {
  const wanted = squeeze(text);
  if (wanted === '') return [];
  const read = readAttribute(text);
  const exact = attributeNames.filter((name) => squeeze(name) === wanted);
  const said = read.guess === 'unknown' ? [] : [read.attribute];
  const mixed = said.flatMap((name) => (/^ColorAdd_[CMY]$/.test(name) ? [name.replace('Add', 'Sub')] : []));
  const begins = attributeNames.filter((name) => squeeze(name).startsWith(wanted));
  const holds = attributeNames.filter((name) => squeeze(name).includes(wanted));
  const words = read.guess === 'likely' ? [...begins, ...said, ...mixed] : [...said, ...mixed, ...begins];
  return [...new Set([...exact, ...words, ...byWordBegun(text), ...holds])].slice(0, MOST);
}

const squeeze = (text: string) => foldWord(text).replace(/[^\p{L}\p{N}]+/gu, '');

/** Attributes of the rules that every word of the text speaks of; the last one may be only begun. */
function byWordBegun(text: string): readonly string[] {
  const words = wordsOf(text).filter(({ raw }) => !/^\d/.test(raw));
  const number = /\d{1,2}/.exec(text)?.[0] ?? '1';
  const meant = words.map(({ folded }) => meaningsBegun(folded));
  if (meant.length === 0) return [];
  const rules = ATTRIBUTE_RULES.filter(
    (rule) => rule.attribute !== '' && meant.every((set) => rule.words.some((word) => set.has(word))),
  );
  const plainest = [...rules].sort((a, b) => a.words.length - b.words.length);
  return plainest.map((rule) => rule.attribute.replace('#', number));
}

function meaningsBegun(folded: string): ReadonlySet<string> {
  const words = [...WORD_MEANINGS].filter(([word]) => word.startsWith(folded));
  return new Set(words.flatMap(([, meanings]) => meanings));
}
