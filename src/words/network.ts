import { formatPortAddress, isPortAddress } from '#engine/address/port-address.ts';
import { isSacnUniverse, multicastGroup } from '#engine/address/sacn-universe.ts';
import type { Convention } from '#engine/model/card.ts';
import type { Delivery, Port } from '#engine/model/plant.ts';
import { numberWords, PROTOCOL_WORDS } from './network-findings.ts';
import { counted } from './screens.ts';

/** The page of a rig's network: how its universes travel, and the devices they come out of. */
export const NETWORK_WORDS = {
  title: 'Network',
  summary: (universes: number, nodes: number) => `${counted(universes, 'universe')} · ${counted(nodes, 'device')}`,
  reader: 'You are a reader here: the network is shown as it stands.',

  convention: 'Convention of numbers',
  conventionAbout: {
    none: 'No standard relates sACN numbers and Port-Addresses. Choose what your crew does; without that, no Port-Address is filled in.',
    'same-number':
      'sACN 1 is Port-Address 0:0:1, and 0:0:0 stays empty. It holds for what is filled in; what stands there stays.',
    'plus-one':
      'sACN 1 is Port-Address 0:0:0, sACN 17 is 0:1:0. It holds for what is filled in; what stands there stays.',
  } satisfies Record<Convention | 'none', string>,

  universes: 'Universes',
  universesAbout: 'The number in the show, the sACN number and the Port-Address are three numbers.',
  noUniverses: 'No unit has an address yet. Give one an address in the sheet; its universe stands here then.',
  fill: 'Fill in deliveries…',
  more: (n: number) => `Show ${n} more`,
  universe: 'Universe',
  by: 'Travels by',
  sacn: 'sACN',
  portAddress: 'Port-Address',
  cast: 'Sent as',
  priority: 'Priority',
  sender: 'Sender',
  outlets: 'Comes out of',
  runs: 'Runs',
  found: 'Findings',
  notes: 'Notes',
  unused: 'no unit on it',
  noSender: 'not said',
  goneSender: 'a device that is gone',
  nowhere: 'no port',
  ofUniverse: (universe: number, cell: string) => `Universe ${universe}: ${cell}`,
  toRibbon: (universe: number) => `Universe ${universe}, its slots`,
  toNetwork: 'How it travels',

  devices: 'Devices',
  devicesAbout:
    'What is sent to one address, by Art-Net or unicast, has to be in reach of address and mask. What sACN sends to a group needs no mask, and within one network no router.',
  noDevices: 'No device yet. Add what sends universes and the nodes that turn them into data lines.',
  addNode: 'Add a node…',
  addSource: 'Add a source…',
  nameOf: { node: 'Name of the node', source: 'Name of the source' },
  add: 'Add it',
  remove: 'Remove…',
  removeOf: (name: string) => `Remove ${name}…`,
  removeTitle: (name: string) => `Remove ${name}?`,
  removeAbout: 'Its ports go with it. Runs that begin at them, and universes it sends, stay and name nothing any more.',
  removeIt: 'Remove it',
  listen: 'Listen to universes…',
  listenOf: (name: string) => `${name}: listen to universes…`,
  nameCell: 'Name',
  role: 'What it does',
  address: 'Network address',
  mask: 'Mask',
  ports: 'Ports',
  together: 'Ports per reply',
  link: 'Link in Mbit/s',
  position: 'Position',
  ofNode: (name: string, cell: string) => `${name}: ${cell}`,
  port: (index: number) => `Port ${index}`,
  ofPort: (name: string, index: number, cell: string) => `Port ${index} of ${name}: ${cell}`,
  portBy: 'protocol',
  portNumber: 'number it listens to',
  free: 'free',
  nothingOut: 'no universe travels so',
  noRun: 'no run',

  which: 'Universes',
  whichHint: 'Such as 1-4, 7. Empty: every universe in use of which nobody has said how it travels.',
  notUniverses: 'Write universes of 1 to 63999, such as 1-4, 7.',
  travelBy: 'They travel by',
  bothNumbers: 'Write the number of the other protocol as well',
  from: 'From universe',
  fromHint: 'Empty: the first that no port listens to.',
  leave: 'Leave it',
  apply: 'Apply',
  changes: (n: number) => `It sets ${counted(n, 'line')}:`,
  andMore: (n: number) => `and ${n} more`,
} as const;

/** `sACN 3 (239.255.0.3)`; the number alone where no group is known by it. */
function sacnWords(number: number): string {
  return isSacnUniverse(number) ? `sACN ${number} (${multicastGroup(number).ipv4})` : `sACN ${number}`;
}

/** How a universe travels, with whatever numbers stand: `Universe 3: by sACN · sACN 3 (239.255.0.3) · Port-Address 0:0:3 (0x0003)`. */
export function wayWords({ universe, by, sacn, portAddress }: Delivery): string {
  const parts = [
    by === 'cable' ? 'by cable' : `by ${PROTOCOL_WORDS[by]}`,
    sacn === null ? '' : sacnWords(sacn),
    portAddress !== null && isPortAddress(portAddress) ? `Port-Address ${formatPortAddress(portAddress)}` : '',
  ];
  return `Universe ${universe}: ${parts.filter((part) => part !== '').join(' · ')}`;
}

/** `Port 2 of Beam: sACN 3`. */
export function listenWords(name: string, { index, by, number }: Port): string {
  const to = by === null || number === null ? NETWORK_WORDS.free : numberWords(by, number);
  return `Port ${index} of ${name}: ${to}`;
}
