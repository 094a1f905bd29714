import type { FixtureType } from '#engine/model/fixture-type.ts';
import { from, lit, type ModeTable, slot, type TypeTable, typeOfTable } from './type-table.ts';

const DIMMER = (slots: string) => lit('100%', slot(slots, 'Dimmer', 'Dimmer'));

const SHUTTER = (slots: string) =>
  lit(
    '255',
    from(
      '255',
      slot(
        slots,
        'Shutter',
        'Shutter1',
        '0-31 Closed',
        '32-159 Strobe, slow to fast [Shutter1Strobe]',
        '160-207 Pulses, slow to fast [Shutter1StrobePulse]',
        '208-255 Open [Shutter1]',
      ),
    ),
  );

const PAN = (slots: string) => from('50%', slot(slots, 'Pan', 'Pan'));
const TILT = (slots: string) => from('50%', slot(slots, 'Tilt', 'Tilt'));
const SPEED = (slots: string) => slot(slots, 'Speed of pan and tilt', 'PositionMSpeed');

const COLOUR_WHEEL = (slots: string) =>
  slot(
    slots,
    'Colour wheel',
    'Color1',
    '0-13 Open',
    '14-27 Rust',
    '28-41 Pale gold',
    '42-55 Moss',
    '56-69 Lagoon',
    '70-83 Slate blue',
    '84-97 Heather',
    '98-139 Between two colours, Rust to Heather',
    '140-197 Turns forward, slow to fast [Color1WheelSpin]',
    '198-255 Turns back, slow to fast [Color1WheelSpin]',
  );

const TURNING_GOBOS = (slots: string) =>
  slot(
    slots,
    'Turning gobos',
    'Gobo1',
    '0-17 Open',
    '18-35 Reeds',
    '36-53 Shoal',
    '54-71 Broken pane',
    '72-89 Rope',
    '90-107 Gulls',
    '108-125 Lattice',
    '126-197 Shakes, Reeds to Lattice [Gobo1SelectShake]',
    '198-255 Wheel turns, slow to fast [Gobo1WheelSpin]',
  );

const FIXED_GOBOS = (slots: string) =>
  slot(
    slots,
    'Fixed gobos',
    'Gobo2',
    '0-23 Open',
    '24-47 Portholes',
    '48-71 Shingle',
    '72-95 Planks',
    '96-119 Cone',
    '120-187 Shakes, Portholes to Cone [Gobo2SelectShake]',
    '188-255 Wheel turns, slow to fast [Gobo2WheelSpin]',
  );

const PRISM = (slots: string) =>
  slot(slots, 'Prism', 'Prism1', '0-63 Out', '64-159 Three faces', '160-255 Six in a row');
const TURN_PRISM = (slots: string) =>
  slot(
    slots,
    'Prism turning',
    'Prism1Pos',
    '0-127 Angle',
    '128-190 Turns forward, fast to slow [Prism1PosRotate]',
    '191-192 Stands still [Prism1PosRotate]',
    '193-255 Turns back, slow to fast [Prism1PosRotate]',
  );

const TURN_GOBO = (slots: string) =>
  slot(
    slots,
    'Gobo turning',
    'Gobo1Pos',
    '0-127 Angle',
    '128-190 Turns forward, fast to slow [Gobo1PosRotate]',
    '191-192 Stands still [Gobo1PosRotate]',
    '193-255 Turns back, slow to fast [Gobo1PosRotate]',
  );

const FROST = (slots: string) => slot(slots, 'Frost', 'Frost1', '0-7 Out', '8-255 In, light to heavy');
const IRIS = (slots: string) =>
  slot(slots, 'Iris', 'Iris', '0-199 Open to small', '200-255 Pulses, slow to fast [IrisStrobe]');
const ZOOM = (slots: string) => from('50%', slot(slots, 'Zoom', 'Zoom'));
const FOCUS = (slots: string) => from('50%', slot(slots, 'Focus', 'Focus1'));

const CONTROL = (slots: string, more: readonly string[]) =>
  slot(
    slots,
    'Control',
    'Control1',
    '0-19 No change',
    '20-39 Reset head, hold for 5 s [FixtureGlobalReset]',
    '40-59 Reset wheels, hold for 5 s [FixtureGlobalReset]',
    ...more,
  );

const CONTROL_BEFORE = ['60-255 No change [Control1]'];
const CONTROL_SINCE = ['60-79 Fans quiet, less light [Control1]', '80-99 Fans as warm as it is', '100-255 No change'];

const STANDARD_BEFORE: ModeTable = {
  name: 'Standard',
  rows: [
    DIMMER('1'),
    SHUTTER('2'),
    PAN('3, 5'),
    TILT('4, 6'),
    SPEED('7'),
    slot('8', 'Cyan', 'ColorSub_C'),
    slot('9', 'Magenta', 'ColorSub_M'),
    slot('10', 'Yellow', 'ColorSub_Y'),
    COLOUR_WHEEL('11'),
    TURNING_GOBOS('12'),
    TURN_GOBO('13'),
    FIXED_GOBOS('14'),
    PRISM('15'),
    TURN_PRISM('16'),
    FROST('17'),
    IRIS('18'),
    ZOOM('19'),
    FOCUS('20, 22'),
    CONTROL('21', CONTROL_BEFORE),
  ],
};

/** Dimmer and zoom have become fine, so that everything behind them has moved. */
const STANDARD_SINCE: ModeTable = {
  name: 'Standard',
  firmware: '2.2+',
  rows: [
    DIMMER('1-2'),
    SHUTTER('3'),
    PAN('4, 6'),
    TILT('5, 7'),
    SPEED('8'),
    slot('9', 'Cyan', 'ColorSub_C'),
    slot('10', 'Magenta', 'ColorSub_M'),
    slot('11', 'Yellow', 'ColorSub_Y'),
    COLOUR_WHEEL('12'),
    TURNING_GOBOS('13'),
    TURN_GOBO('14'),
    FIXED_GOBOS('15'),
    PRISM('16'),
    TURN_PRISM('17'),
    FROST('18'),
    IRIS('19'),
    ZOOM('20, 22'),
    FOCUS('21, 23'),
    CONTROL('24', CONTROL_SINCE),
  ],
};

const extended = (control: readonly string[]): ModeTable => ({
  name: 'Extended',
  firmware: '2.0+',
  rows: [
    DIMMER('1-2'),
    SHUTTER('3'),
    PAN('4, 6'),
    TILT('5, 7'),
    SPEED('8'),
    slot('9-10', 'Cyan', 'ColorSub_C'),
    slot('11-12', 'Magenta', 'ColorSub_M'),
    slot('13-14', 'Yellow', 'ColorSub_Y'),
    slot('15', 'Warm shift', 'CTO'),
    COLOUR_WHEEL('16'),
    TURNING_GOBOS('17'),
    TURN_GOBO('18-19'),
    FIXED_GOBOS('20'),
    slot('21', 'Ripple glass', 'AnimationWheel1', '0-9 Out', '10-127 In, upright', '128-255 In, lying'),
    slot('22', 'Ripple turning', 'AnimationWheel1Pos', '0-126 Forward, fast to slow', '127-128 Still', '129-255 Back'),
    PRISM('23'),
    TURN_PRISM('24'),
    FROST('25'),
    IRIS('26-27'),
    ZOOM('28, 30'),
    FOCUS('29, 31'),
    slot('32', 'Moves', 'PositionEffect', '0-31 None', '32-95 Nod', '96-159 Sway', '160-255 Circle'),
    slot('33', 'Dimmer curve', 'DimmerCurve', '0-63 Even', '64-127 Gentle foot', '128-255 As a filament'),
    CONTROL('34', control),
  ],
});

const ABOUT: Omit<TypeTable, 'modes'> = {
  facts: {
    maker: 'Stoat & Ravel',
    model: 'Halyard spot',
    shortName: 'Halyard',
    description: 'Moving spot with two gobo wheels, prism, frost and iris.',
    weight: '27.5',
    power: '780',
    powerFactor: '0.97',
    voltage: '100-240',
    connector: 'Locking mains inlet, 20 A',
    perBreaker: '16 A, 230 V: 3 units\n20 A, 120 V: 2 units',
    onLoss: 'Holds the last values',
    strobe: 'yes',
    movingParts: 'yes',
    heat: 'yes',
  },
  spans: {
    Pan: [-270, 270],
    Tilt: [-132, 132],
    Zoom: [6, 38],
    CTO: [6500, 2900],
    Shutter1Strobe: [0.5, 16],
    Shutter1StrobePulse: [0.5, 4],
  },
};

/** An invented moving spot, as its first manual has it. */
export const halyardSpot: FixtureType = typeOfTable({ ...ABOUT, modes: [STANDARD_BEFORE, extended(CONTROL_BEFORE)] });

/** The same since firmware 2.2: its shorter mode has grown by two slots. */
export const halyardSpotSince22: FixtureType = typeOfTable({
  ...ABOUT,
  modes: [STANDARD_SINCE, extended(CONTROL_SINCE)],
});
