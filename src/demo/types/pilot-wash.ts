import { from, lit, slot, typeOfTable } from './type-table.ts';

const DIMMER = (slots: string) => lit('100%', slot(slots, 'Dimmer', 'Dimmer'));
const PAN = (slots: string) => from('50%', slot(slots, 'Pan', 'Pan'));
const TILT = (slots: string) => from('50%', slot(slots, 'Tilt', 'Tilt'));

const SHUTTER = (slots: string) =>
  lit(
    '20',
    from(
      '20',
      slot(
        slots,
        'Shutter',
        'Shutter1',
        '0-15 Closed',
        '16-23 Open',
        '24-119 Strobe, slow to fast [Shutter1Strobe]',
        '120-135 Open [Shutter1]',
        '136-215 Random strobe, slow to fast [Shutter1StrobeRandom]',
        '216-255 Open [Shutter1]',
      ),
    ),
  );

const CONTROL = (slots: string) =>
  slot(
    slots,
    'Control',
    'Control1',
    '0-39 No change',
    '40-49 Display off',
    '50-59 Display on',
    '60-69 Light follows the old curve',
    '70-79 Light follows the even curve',
    '80-199 No change',
    '200-219 Reset, hold for 3 s [FixtureGlobalReset]',
    '220-255 No change [Control1]',
  );

/** An invented wash light on a yoke: 19 red, green, blue and white emitters. */
export const pilotWash = typeOfTable({
  facts: {
    maker: 'Umberforge',
    model: 'Pilot 19 wash',
    shortName: 'Pilot 19',
    description: 'Moving wash light of 19 emitters, with zoom.',
    weight: '11.4',
    power: '410',
    powerFactor: '0.96',
    voltage: '100-240',
    connector: 'Locking mains inlet, 20 A, with outlet',
    perBreaker: '16 A, 230 V: 6 units\n20 A, 120 V: 4 units',
    onLoss: 'Holds the last values for 10 s, then fades to dark',
    strobe: 'yes',
    movingParts: 'yes',
    heat: 'yes',
  },
  spans: {
    Pan: [-265, 265],
    Tilt: [-110, 110],
    Zoom: [7, 52],
    CTC: [2800, 8000],
    Shutter1Strobe: [0.8, 18],
    Shutter1StrobeRandom: [0.8, 12],
  },
  modes: [
    {
      name: 'Short 12',
      description: 'For desks with few slots to spare',
      rows: [
        DIMMER('1'),
        SHUTTER('2'),
        PAN('3, 5'),
        TILT('4, 6'),
        slot('7', 'Red', 'ColorAdd_R'),
        slot('8', 'Green', 'ColorAdd_G'),
        slot('9', 'Blue', 'ColorAdd_B'),
        lit('255', slot('10', 'White', 'ColorAdd_W')),
        slot('11', 'Zoom', 'Zoom'),
        CONTROL('12'),
      ],
    },
    {
      name: 'Full 24',
      firmware: '1.4+',
      rows: [
        DIMMER('1-2'),
        SHUTTER('3'),
        PAN('4, 6'),
        TILT('5, 7'),
        slot('8', 'Speed of pan and tilt', 'PositionMSpeed', '0-7 As fast as the data', '8-255 Fast to slow'),
        slot('9-10', 'Red', 'ColorAdd_R'),
        slot('11-12', 'Green', 'ColorAdd_G'),
        slot('13-14', 'Blue', 'ColorAdd_B'),
        lit('100%', slot('15-16', 'White', 'ColorAdd_W')),
        slot('17', 'Colour temperature', 'CTC'),
        slot(
          '18',
          'Ready colours',
          'ColorMacro1',
          '0-9 None',
          '10-34 Low sun',
          '35-59 Kelp',
          '60-84 Harbour blue',
          '85-109 Heather',
          '110-134 Brick',
          '135-255 Run through all',
        ),
        slot('19', 'Time between ready colours', 'ColorMacro1Rate'),
        slot('20-21', 'Zoom', 'Zoom'),
        slot(
          '22',
          'Ring pictures',
          'Effects1',
          '0-15 All rings',
          '16-63 Inner ring only',
          '64-111 Outer ring only',
          '112-183 Rings breathe',
          '184-255 Rings turn',
        ),
        slot('23', 'Fans', 'Fan1', '0-63 As warm as it is', '64-127 Quiet, less light', '128-255 Full'),
        CONTROL('24'),
      ],
    },
  ],
});
