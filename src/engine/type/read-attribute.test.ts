import { describe, expect, it } from 'vitest';
import { flashesIn, readAttribute } from './read-attribute.ts';

/** Names as manuals write them (common practice) and the attribute they mean (GDTF, Annex B). */
const NAMES = `
Dimmer = Dimmer sure
Master intensity = Dimmer sure
Helligkeit = Dimmer sure
Shutter / Strobe = Shutter1 sure
Strobe = Shutter1Strobe sure
Strobe rate = StrobeRate sure
Pan = Pan sure
Pan/Tilt speed = PositionMSpeed sure
Pan speed = PositionMSpeed likely
Pan rotation = PanRotate sure
Colour wheel 2 = Color2 sure
Colour = Color1 likely
Colour macro = ColorMacro1 sure
Colour temperature = CTC sure
Warm white = ColorAdd_WW sure
CW = ColorAdd_CW sure
Amber = ColorAdd_RY sure
Red 2 = ColorAdd_R sure {2}
Cell 3 red = ColorAdd_R sure {Cell 3}
Red (pixel 12) = ColorAdd_R sure {Pixel 12}
R = ColorAdd_R likely
Rot = ColorAdd_R sure
Gobo rot = Gobo1PosRotate sure
Gobo 2 index = Gobo2Pos sure
Rotating gobo wheel = Gobo1PosRotate sure
Prism 1 rotation = Prism1PosRotate sure
Blade 2B = Blade2B sure
Blade 4 rotation = Blade4Rot sure
Fan speed = Fan1 sure
Fog = Fog1 sure
Lamp control = LampControl sure
Lamp on/off = LampControl likely
Reset = FixtureGlobalReset sure
Macro = Effects1 likely
Reserved = NoFeature sure
No function = NoFeature sure
Not used = NoFeature sure
Speed = Speed unknown
Program speed = Program speed unknown
Confetti = Confetti unknown
Magic light = Magic light unknown
ColorAdd_UV = ColorAdd_UV stated
PositionEffectRate = PositionEffectRate stated
`;

describe('readAttribute', () => {
  it.each(NAMES.trim().split('\n'))('%s', (row) => {
    const [name = ''] = row.split(' = ');
    const { attribute, guess, part } = readAttribute(name);
    expect(`${name} = ${attribute} ${guess}${part === '' ? '' : ` {${part}}`}`).toBe(row);
  });

  it('takes words about bytes out of a name', () => {
    const said = (name: string) => {
      const read = readAttribute(name);
      return `${read.name}: ${read.bytes}`;
    };
    expect(
      ['Pan fine', 'Tilt (coarse/fine)', 'Zoom 16-bit', 'MSB Focus', 'Iris ultra fine', 'Fein', 'Pan low byte'].map(
        said,
      ),
    ).toEqual(['Pan: fine', 'Tilt: all', 'Zoom: wide', 'Focus: coarse', 'Iris: ultra', ': fine', 'Pan: fine']);
  });
});

describe('flashesIn', () => {
  it('is sure only of values that begin with flashing', () => {
    const texts = [
      'Strobe, slow to fast',
      'Random strobe',
      'Pulse strobe',
      'Blitz',
      'No strobe',
      'Open',
      'Gobo with strobe',
      '',
    ];
    const kinds = ['Strobe', 'StrobeRandom', 'StrobePulse', 'Strobe', null, null, null, null];
    expect(texts.map(flashesIn)).toEqual(kinds);
  });
});
