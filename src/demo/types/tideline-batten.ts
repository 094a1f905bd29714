import { from, lit, slot, typeOfTable } from './type-table.ts';

const DIMMER = (slots: string) => lit('100%', slot(slots, 'Dimmer', 'Dimmer'));

const SHUTTER = (slots: string) =>
  lit(
    '0',
    slot(
      slots,
      'Strobe',
      'Shutter1',
      '0-11 Open',
      '12-235 Strobe, slow to fast [Shutter1Strobe]',
      '236-255 Open [Shutter1]',
    ),
  );

const CONTROL = (slots: string) =>
  slot(
    slots,
    'Control',
    'Control1',
    '0-99 No change',
    '100-109 Cells counted from the inlet',
    '110-119 Cells counted from the far end',
    '120-255 No change',
  );

/** Of one cell; `first` is the slot of its red. */
const CELL = (first: number) => [
  slot(`${first}`, 'Red', 'ColorAdd_R'),
  slot(`${first + 1}`, 'Green', 'ColorAdd_G'),
  slot(`${first + 2}`, 'Blue', 'ColorAdd_B'),
  lit('255', slot(`${first + 3}`, 'Warm white', 'ColorAdd_WW')),
];

/** An invented batten of twelve cells, which may act as four. */
export const tidelineBatten = typeOfTable({
  facts: {
    maker: 'Penhallow',
    model: 'Tideline batten',
    shortName: 'Tideline',
    description: 'Batten of twelve cells for cloths, 1.2 m long.',
    weight: '9.8',
    power: '260',
    powerFactor: '0.94',
    voltage: '100-240',
    connector: 'Locking mains inlet, 16 A, with outlet',
    perBreaker: '16 A, 230 V: 10 units',
    switches: 'A',
    onLoss: 'Goes dark at once',
    strobe: 'yes',
    heat: 'yes',
  },
  spans: { Shutter1Strobe: [1, 20] },
  modes: [
    {
      name: 'Four cells 20',
      description: 'Three cells act as one',
      rows: [
        DIMMER('1'),
        SHUTTER('2'),
        slot(
          '3',
          'Ready pictures',
          'ColorMacro1',
          '0-15 None',
          '16-75 Dawn',
          '76-135 Open sea',
          '136-195 Dusk',
          '196-255 Storm light',
        ),
        CONTROL('4'),
      ],
      cells: { name: 'Quarter', count: 4, rows: CELL(5) },
    },
    {
      name: 'Twelve cells 52',
      rows: [DIMMER('1-2'), SHUTTER('3'), from('0', CONTROL('4'))],
      cells: { name: 'Cell', count: 12, rows: CELL(5) },
    },
  ],
});
