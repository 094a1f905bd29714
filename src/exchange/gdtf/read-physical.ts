import { NOTHING_STATED, type Physical } from '#engine/model/fixture-type.ts';
import { below, childrenOf, elementAt, textOf } from './elements.ts';
import type { Notes } from './notes.ts';
import type { XmlElement } from './read-xml.ts';

/** What a description states of weight and power. A default of the format is never taken for a figure. */
export function readPhysical(fixtureType: XmlElement, notes: Notes): Physical {
  const properties = elementAt(fixtureType, 'PhysicalDescriptions', 'Properties');
  const connectors = childrenOf(elementAt(fixtureType, 'PhysicalDescriptions', 'Connectors'), 'Connector');
  const feed = strongest(childrenOf(properties, 'PowerConsumption'), notes);
  const inlet = connectors.find((each) => textOf(each, 'Name') === feed?.attributes.Connector);
  return {
    ...NOTHING_STATED,
    weight: stated('weight', elementAt(properties ?? fixtureType, 'Weight'), notes),
    power: stated('power', feed, notes) ?? guessPower(elementAt(fixtureType, 'Geometries'), notes),
    powerFactor: feed === undefined ? null : notes.number(feed, 'PowerFactor'),
    voltage: feed === undefined ? null : readVoltage(feed, notes),
    connector: textOf(inlet ?? connectors.find(isInlet) ?? fixtureType, 'Type'),
  };
}

function stated(figure: 'weight' | 'power', element: XmlElement | undefined, notes: Notes): number | null {
  const value = element === undefined ? null : notes.number(element, 'Value');
  if (value === null) return null;
  if (value > 0) return value;
  notes.guesses.push({ kind: 'not-stated', figure });
  return null;
}

/** Several feeds are alternatives or halves, which no file says; the largest is the one to plan with until a person looks. */
function strongest(feeds: readonly XmlElement[], notes: Notes): XmlElement | undefined {
  const watts = feeds.map((feed) => notes.number(feed, 'Value') ?? 0);
  const most = Math.max(...watts);
  if (feeds.length > 1) notes.guesses.push({ kind: 'power', from: 'largest', watts: most });
  return feeds[watts.indexOf(most)] ?? feeds[0];
}

function readVoltage(feed: XmlElement, notes: Notes): Physical['voltage'] {
  const low = notes.number(feed, 'VoltageLow');
  const high = notes.number(feed, 'VoltageHigh');
  if (low === null && high === null) return null;
  return { low: low ?? high ?? 0, high: high ?? low ?? 0 };
}

// Connector types of GDTF Annex D that bring power; the list also has data plugs.
const INLET = /^(IEC 60320|CEE|Schuko|Edison|Wieland|\d+A-CEE|Powerlock|Camlock|L\d+-\d+|Stagepin)/i;
const isInlet = (connector: XmlElement) => INLET.test(textOf(connector, 'Type'));

/** Without a stated figure: what its consumers draw together. Beams carry a default of 1000 W, so they are not asked. */
function guessPower(geometries: XmlElement | undefined, notes: Notes): number | null {
  if (geometries === undefined) return null;
  let watts = 0;
  for (const each of below(geometries)) {
    const consumes = each.name === 'WiringObject' && textOf(each, 'ComponentType') === 'Consumer';
    if (consumes) watts += notes.number(each, 'ElectricalPayLoad') ?? 0;
  }
  if (watts <= 0) return null;
  notes.guesses.push({ kind: 'power', from: 'consumers', watts });
  return watts;
}
