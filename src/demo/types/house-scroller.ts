import { lit, slot, typeOfTable } from './type-table.ts';

/** A filament par on a house dimmer, with a scroller before it that is fed data of its own. */
export const houseScroller = typeOfTable({
  facts: {
    maker: 'House',
    model: 'par with scroller',
    shortName: 'Par and scroller',
    description: 'Filament par on a house dimmer; the scroller has an address and a supply of its own.',
    weight: '5.1',
    power: '1 kW',
    powerFactor: '1',
    voltage: '230',
    connector: 'Three round pins, 15 A; scroller by its own cable',
    switches: 'B',
    onLoss: 'The dimmers hold the last level, the scroller stops where it is',
    movingParts: 'yes',
    heat: 'yes',
  },
  modes: [
    {
      name: 'Dimmer and scroller',
      rows: [
        lit('255', slot('1', 'Dimmer', 'Dimmer')),
        {
          break: '2',
          part: 'Scroller',
          ...slot(
            '1',
            'Colour',
            'Color1',
            '0-27 Clear',
            '28-55 Straw',
            '56-83 Low sun',
            '84-111 Brick',
            '112-139 Kelp',
            '140-167 Harbour blue',
            '168-195 Night',
            '196-223 Heather',
            '224-255 End of the string',
          ),
        },
      ],
    },
  ],
});
