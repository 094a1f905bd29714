import type { Absolute, Universe } from '#engine/model/address.ts';
import { aimOfPoint } from '../../universes/carry.ts';

/** The address of the slot of a ribbon that a finger came down on; undefined beside the ribbons. */
export function aimOfTap(target: Element, x: number): Absolute | undefined {
  const ribbon = target.closest<HTMLElement>('[data-universe]');
  if (ribbon === null) return undefined;
  const { left, width } = ribbon.getBoundingClientRect();
  const places = { left, length: width, top: 0, line: 1 };
  return aimOfPoint({ x, y: 0 }, 0, places, [Number(ribbon.dataset.universe) as Universe]);
}
