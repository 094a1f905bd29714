import { zipSync } from 'fflate';

/** A `.gdtf` file made by hand of its geometries and modes, for tests: everything else is the least the format asks for. */
export function gdtfFile(description: string): Uint8Array {
  return zipSync({ 'description.xml': new TextEncoder().encode(description) });
}

/** A description of the version, geometries and modes given. */
export function gdtfDescription(geometries: string, modes: string, version = '1.2'): string {
  return `<?xml version="1.0" encoding="UTF-8"?>
<GDTF DataVersion="${version}">
 <FixtureType Name="Sample" Manufacturer="Corvid Stage" FixtureTypeID="1F3B5C7D-0A2C-4E6F-8B9D-0123456789AB">
  <AttributeDefinitions/>
  <Geometries>${geometries}</Geometries>
  <DMXModes>${modes}</DMXModes>
 </FixtureType>
</GDTF>`;
}

/** A channel of one function. `offset` as the format spells it. */
export function gdtfChannel(geometry: string, attribute: string, offset: string, rest = ''): string {
  return `<DMXChannel Geometry="${geometry}" Offset="${offset}" ${rest}><LogicalChannel Attribute="${attribute}"><ChannelFunction Attribute="${attribute}" DMXFrom="0/1" Default="0/1"/></LogicalChannel></DMXChannel>`;
}
