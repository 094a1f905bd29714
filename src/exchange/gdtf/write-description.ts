import type { FixtureType, Part, PartKind, Physical } from '#engine/model/fixture-type.ts';
import { attributeFacts } from '#engine/type/attributes.ts';
import { describeMode } from './write-mode.ts';
import { type Tag, tag } from './write-xml.ts';

/** The description of a type whose names are spelled as the format allows. The order of elements is that of the schema. */
export function describeType(type: FixtureType): Tag {
  return tag('GDTF', { DataVersion: '1.2' }, [
    tag(
      'FixtureType',
      {
        Name: type.model,
        ShortName: type.shortName,
        LongName: type.model,
        Manufacturer: type.maker,
        Description: type.description,
        FixtureTypeID: type.guid,
      },
      [
        attributeDefinitions(type),
        tag('PhysicalDescriptions', {}, physicalDescriptions(type.physical)),
        tag('Geometries', {}, geometries(type)),
        tag('DMXModes', {}, type.modes.map(describeMode)),
      ],
    ),
  ]);
}

const OTHER = { feature: 'Control.Control', unit: 'None' } as const;

function attributeDefinitions({ modes }: FixtureType): Tag {
  const uses = modes.flatMap((mode) => mode.channels.flatMap((channel) => channel.uses));
  const names = new Set(uses.flatMap((use) => [use.attribute, ...use.functions.map((each) => each.attribute)]));
  // A name that stands twice on a part is told apart by a number behind it.
  const rows = [...names].sort().map((name) => ({ name, ...(attributeFacts(name.replace(/ \(\d+\)$/, '')) ?? OTHER) }));
  const features = [...new Set(rows.map((row) => row.feature))].sort().map((feature) => feature.split('.'));
  const groups = [...new Set(features.map(([group]) => group ?? ''))];
  return tag('AttributeDefinitions', {}, [
    tag(
      'FeatureGroups',
      {},
      groups.map((group) =>
        tag(
          'FeatureGroup',
          { Name: group, Pretty: group },
          features.filter(([name]) => name === group).map(([, name]) => tag('Feature', { Name: name })),
        ),
      ),
    ),
    tag(
      'Attributes',
      {},
      rows.map(({ name, feature, unit }) =>
        tag('Attribute', { Name: name, Pretty: name, Feature: feature, PhysicalUnit: unit }),
      ),
    ),
  ]);
}

const INLET = 'Power';

function physicalDescriptions({ weight, power, powerFactor, voltage, connector }: Physical): Tag[] {
  const feed = power !== null || powerFactor !== null || voltage !== null || connector !== '';
  const properties: Tag[] = [];
  if (weight !== null) properties.push(tag('Weight', { Value: weight }));
  if (feed) {
    const consumption = {
      Value: power ?? undefined,
      PowerFactor: powerFactor ?? undefined,
      Connector: INLET,
      VoltageLow: voltage?.low,
      VoltageHigh: voltage?.high,
    };
    properties.push(tag('PowerConsumption', consumption));
  }
  const connectors = feed ? [tag('Connectors', {}, [tag('Connector', { Name: INLET, Type: connector })])] : [];
  return properties.length === 0 ? [] : [...connectors, tag('Properties', {}, properties)];
}

const ELEMENTS: Readonly<Record<PartKind, string>> = { part: 'Geometry', axis: 'Axis', beam: 'Beam', laser: 'Laser' };

/** The parts as a tree. Parts that modes name and the type does not have stand at the top, since links must lead somewhere. */
function geometries({ parts, modes }: FixtureType): Tag[] {
  const children = new Map<string | null, Part[]>();
  for (const part of parts) {
    const known = children.get(part.within);
    if (known === undefined) children.set(part.within, [part]);
    else known.push(part);
  }
  const known = new Set(parts.map((part) => part.name));
  const named = modes.flatMap((mode) => [mode.root, ...mode.channels.map((channel) => channel.part)]);
  const missing = [...new Set(named)].filter((name) => !known.has(name));
  const element = (part: Part): Tag => {
    const inner = (children.get(part.name) ?? []).map(element);
    if (part.copy === null) return tag(ELEMENTS[part.kind], { Name: part.name }, inner);
    const breaks = part.copy.starts.map((start) => tag('Break', { DMXOffset: start.slot, DMXBreak: start.break }));
    return tag('GeometryReference', { Name: part.name, Geometry: part.copy.of }, [...inner, ...breaks]);
  };
  return [...(children.get(null) ?? []).map(element), ...missing.map((name) => tag('Geometry', { Name: name }))];
}
