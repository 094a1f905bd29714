import { unreachable } from '#base/unreachable.ts';
import type { Rig } from '../model/rig.ts';
import { channelSheet } from './channel-sheet.ts';
import { channelSlotSheet } from './channel-slot-sheet.ts';
import { circuitSheet } from './circuit-sheet.ts';
import { faultList } from './fault-list.ts';
import { findingSheet } from './finding-sheet.ts';
import { networkSheet } from './network-sheet.ts';
import { patchSheet } from './patch-sheet.ts';
import { positionSheet } from './position-sheet.ts';
import { runSheet } from './run-sheet.ts';
import type { Sheet, SheetKind, Standing } from './sheet.ts';
import { techPack } from './tech-pack.ts';
import { universeSheet } from './universe-sheet.ts';
import { universeSlotSheet } from './universe-slot-sheet.ts';

/** The sheet of a kind of a rig, with what stands at its foot. */
export function makeSheet(kind: SheetKind, rig: Rig, standing: Standing): Sheet {
  switch (kind) {
    case 'patch':
      return patchSheet(rig, standing);
    case 'channels':
      return channelSheet(rig, standing);
    case 'universes':
      return universeSheet(rig, standing);
    case 'universe-slots':
      return universeSlotSheet(rig, standing);
    case 'channel-slots':
      return channelSlotSheet(rig, standing);
    case 'circuits':
      return circuitSheet(rig, standing);
    case 'positions':
      return positionSheet(rig, standing);
    case 'findings':
      return findingSheet(rig, standing);
    case 'network':
      return networkSheet(rig, standing);
    case 'runs':
      return runSheet(rig, standing);
    case 'tech-pack':
      return techPack(rig, standing);
    case 'fault-list':
      return faultList(rig, standing);
    default:
      return unreachable(kind);
  }
}
