import type { CardKind } from '#engine/model/card.ts';
import type { Finding } from '#engine/model/finding.ts';
import { isNetworkFinding } from '#words/network-findings.ts';
import { isPlantFinding, type PlantFinding } from '#words/plant-findings.ts';

const CARDS: readonly CardKind[] = ['setup', 'node', 'port', 'delivery'];

/** Whether a finding is dealt with on the page of the network. */
export const isOnNetworkPage = (finding: Finding): finding is PlantFinding =>
  isNetworkFinding(finding) ||
  (isPlantFinding(finding) && finding.rule === 'card-unreadable' && CARDS.includes(finding.card));

/** Whether a finding speaks of a universe. */
export const isOfUniverse = (finding: PlantFinding, universe: number): boolean =>
  'universes' in finding && (finding.universes as readonly number[]).includes(universe);

/** Whether a finding is listed with the universes: it is of some, or of a cell of a delivery. */
export const isOfUniverses = (finding: PlantFinding): boolean =>
  finding.rule === 'card-unreadable' ? finding.card === 'delivery' : 'universes' in finding && !('node' in finding);

/** Whether a finding is of cells of devices that no name of theirs tells apart. */
export const isOfSomeDevice = (finding: PlantFinding): boolean =>
  finding.rule === 'card-unreadable' && (finding.card === 'node' || finding.card === 'port');

/** Whether a finding speaks of a device or of a port of it. */
export function isOfNode(finding: PlantFinding, node: string): boolean {
  switch (finding.rule) {
    case 'same-node-address':
      return finding.nodes.some((each) => each.node === node);
    case 'number-reserved':
    case 'port-address-zero':
      return finding.ports.some((each) => each.node === node);
    default:
      return 'node' in finding && finding.node === node;
  }
}

/** Whether a finding speaks of one port of a device. */
export function isOfPort(finding: PlantFinding, node: string, index: number): boolean {
  switch (finding.rule) {
    case 'port-fed-twice':
    case 'port-beyond':
      return finding.node === node && finding.index === index;
    case 'mixed-sub-nets':
      return finding.node === node && finding.first <= index && index <= finding.last;
    case 'number-reserved':
    case 'port-address-zero':
      return finding.ports.some((each) => each.node === node && each.index === index);
    default:
      return false;
  }
}
