import { from, lit, slot, typeOfTable } from './type-table.ts';

/** An invented fixed profile with emitters of four colours. */
export const lodestoneProfile = typeOfTable({
  facts: {
    maker: 'Penhallow',
    model: 'Lodestone profile',
    shortName: 'Lodestone',
    description: 'Fixed profile, emitters in red, lime, green and blue, lens tubes from 15° to 50°.',
    weight: '8.6',
    power: '245',
    powerFactor: '0.95',
    voltage: '100-240',
    connector: 'Locking mains inlet, 16 A, with outlet',
    perBreaker: '16 A, 230 V: 11 units\n20 A, 120 V: 7 units',
    onLoss: 'Holds the last values for 5 minutes, then fades to dark',
    heat: 'yes',
  },
  spans: { CTC: [2700, 6500], HSB_Hue: [0, 360] },
  modes: [
    {
      name: 'Direct 5',
      description: 'Every emitter by itself',
      rows: [
        lit('255', slot('1', 'Dimmer', 'Dimmer')),
        lit('255', slot('2', 'Red', 'ColorAdd_R')),
        lit('255', slot('3', 'Lime', 'ColorAdd_GY')),
        lit('255', slot('4', 'Green', 'ColorAdd_G')),
        lit('255', slot('5', 'Blue', 'ColorAdd_B')),
      ],
    },
    {
      name: 'Colour 9',
      description: 'A white, and a colour laid over it',
      firmware: '3.0+',
      rows: [
        lit('100%', slot('1-2', 'Dimmer', 'Dimmer')),
        slot('3', 'Colour temperature', 'CTC'),
        from('128', slot('4', 'Tint', 'Tint', '0-126 Towards green', '127-128 None', '129-255 Towards magenta')),
        slot('5, 7', 'Hue', 'HSB_Hue'),
        slot('6', 'Saturation', 'HSB_Saturation'),
        slot('8', 'Dimmer curve', 'DimmerCurve', '0-84 Even', '85-169 Gentle foot', '170-255 As a filament'),
        slot(
          '9',
          'Control',
          'Control1',
          '0-49 No change',
          '50-99 Fan as warm as it is',
          '100-149 Fan off, half the light',
          '150-255 No change',
        ),
      ],
    },
  ],
});
