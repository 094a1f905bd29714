import { type PortAddress, portAddress } from './port-address.ts';

export interface NodeIdentity {
  /** The six bytes of its Ethernet address. */
  readonly mac: readonly [number, number, number, number, number, number];
  /** The OEM code of its product, 16 bit. */
  readonly oem: number;
  /** How its address switch stands: `off` gives 2.x.y.z, `on` 10.x.y.z. */
  readonly addressSwitch: 'off' | 'on';
}

/** The address a node gives itself, mask 255.0.0.0, unless it was told another one. Source: Art-Net 4. [AD10] */
export function staticAddress({ mac, oem, addressSwitch }: NodeIdentity): string {
  const [, , , x, y, z] = mac;
  const second = (x + (oem >> 8) + (oem & 255)) % 256;
  return [addressSwitch === 'on' ? 10 : 2, second, y, z].join('.');
}

/** The switches of one reply of a node: the ports it speaks of share Net and Sub-Net. */
export interface ReplySwitches {
  readonly netSwitch: number;
  readonly subSwitch: number;
  /** Of the port, SwIn or SwOut. */
  readonly portSwitch: number;
}

/** The Port-Address of a port of a reply; only the low four bits of Sub-Net and port count. Source: Art-Net 4, ArtPollReply. [AD10] */
export function addressOfPort({ netSwitch, subSwitch, portSwitch }: ReplySwitches): PortAddress {
  return portAddress({ net: netSwitch & 127, subNet: subSwitch & 15, universe: portSwitch & 15 });
}

/** Which port of the device it is, 1-based, where the device sends one reply for every few ports. Source: Art-Net 4, ArtTodData. [AD10] */
export function physicalPort(bindIndex: number, portsPerReply: number, port: number): number {
  return (bindIndex - 1) * portsPerReply + port;
}
