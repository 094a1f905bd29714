import { lit, slot, typeOfTable } from './type-table.ts';

/** An invented strobe with a coloured plate behind its tube. */
export const breakwaterStrobe = typeOfTable({
  facts: {
    maker: 'Umberforge',
    model: 'Breakwater strobe',
    shortName: 'Breakwater',
    description: 'Strobe with a plate of coloured emitters behind it.',
    weight: '7.2',
    power: '690',
    powerFactor: '0.91',
    voltage: '200-240',
    connector: 'Locking mains inlet, 20 A',
    perBreaker: '16 A, 230 V, type C: 4 units',
    switches: 'B',
    onLoss: 'Stops flashing at once',
    strobe: 'yes',
    heat: 'yes',
  },
  spans: { StrobeFrequency: [0.5, 25], StrobeDuration: [0.01, 0.6] },
  modes: [
    {
      name: 'Seven slots',
      rows: [
        lit('255', slot('1', 'Brightness', 'Dimmer')),
        slot('2', 'Flashes a second', 'StrobeFrequency'),
        slot('3', 'Length of a flash', 'StrobeDuration'),
        slot(
          '4',
          'Pattern',
          'Effects1',
          '0-24 Even flashes',
          '25-74 Ramp up',
          '75-124 Ramp down',
          '125-174 Lightning',
          '175-255 At random',
        ),
        slot('5', 'Plate red', 'ColorAdd_R'),
        slot('6', 'Plate green', 'ColorAdd_G'),
        slot('7', 'Plate blue', 'ColorAdd_B'),
      ],
    },
  ],
});
