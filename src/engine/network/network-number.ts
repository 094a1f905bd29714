import type { Delivery } from '../model/plant.ts';

/** What a port of a node must listen to for a delivery to come out of it; null while its number is not said, or it needs no network. */
export function networkNumber(delivery: Delivery): number | null {
  switch (delivery.by) {
    case 'sacn':
      return delivery.sacn;
    case 'art-net':
      return delivery.portAddress;
    case 'cable':
      return null;
  }
}
