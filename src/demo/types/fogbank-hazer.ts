import { slot, typeOfTable } from './type-table.ts';

/** An invented haze machine. */
export const fogbankHazer = typeOfTable({
  facts: {
    maker: 'Fennimore',
    model: 'Fogbank hazer',
    shortName: 'Fogbank',
    description: 'Haze machine with a heated block and a fan.',
    weight: '19',
    power: '1.1 kW',
    powerFactor: '0.99',
    voltage: '220-240',
    connector: 'Locking mains inlet, 16 A',
    perBreaker: '16 A, 230 V: 2 units',
    switches: 'A',
    onLoss: 'Stops the pump, the fan runs on for 2 minutes',
    fog: 'yes',
    heat: 'yes',
  },
  modes: [
    {
      name: 'Three slots',
      rows: [
        slot('1', 'Haze', 'Haze1', '0-5 None', '6-255 Little to much'),
        slot('2', 'Fan', 'Fan1', '0-5 Slowest', '6-255 Slow to fast'),
        slot('3', 'Control', 'Control1', '0-99 Runs', '100-149 Block kept warm only', '150-255 Cools down'),
      ],
    },
  ],
});
