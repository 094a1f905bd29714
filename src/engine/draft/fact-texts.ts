import type { FixtureType } from '../model/fixture-type.ts';
import { cellText } from './cell-text.ts';
import type { FactField } from './draft.ts';

/** The cells of a draft that say what a type says of the whole unit. */
export function factTexts(type: FixtureType): Readonly<Record<FactField, string>> {
  const { physical, settings, hazards } = type;
  const said = (value: boolean) => (value ? 'yes' : '');
  const texts: Record<FactField, string> = {
    maker: type.maker,
    model: type.model,
    shortName: type.shortName,
    description: type.description,
    weight: numberText(physical.weight),
    power: numberText(physical.power),
    powerFactor: numberText(physical.powerFactor),
    voltage: voltageText(physical.voltage),
    connector: physical.connector,
    perBreaker: physical.perBreaker.map(({ breaker, most }) => `${breaker}: ${most}`).join('\n'),
    switches: settings.switches ?? '',
    onLoss: settings.onLoss,
    laser: hazards.laser ?? '',
    strobe: said(hazards.strobe),
    ultraviolet: said(hazards.ultraviolet),
    movingParts: said(hazards.movingParts),
    fog: said(hazards.fog),
    heat: said(hazards.heat),
  };
  return Object.fromEntries(Object.entries(texts).map(([field, text]) => [field, cellText(text)])) as typeof texts;
}

const numberText = (value: number | null) => (value === null ? '' : String(value));

const voltageText = (voltage: FixtureType['physical']['voltage']) =>
  voltage === null ? '' : voltage.low === voltage.high ? String(voltage.low) : `${voltage.low}-${voltage.high}`;
