import { lit, slot, typeOfTable } from './type-table.ts';

/** A filament lamp on one of the house's dimmers: the slot is the dimmer's. */
export const houseFresnel = typeOfTable({
  facts: {
    maker: 'House',
    model: '1 kW fresnel',
    shortName: '1 kW fresnel',
    description: 'Filament fresnel on a house dimmer.',
    weight: '6.5',
    power: '1 kW',
    powerFactor: '1',
    voltage: '230',
    connector: 'Three round pins, 15 A',
    onLoss: 'The dimmers hold the last level',
    heat: 'yes',
  },
  modes: [{ name: 'Dimmer', rows: [lit('255', slot('1', 'Dimmer', 'Dimmer'))] }],
});
