import { type PointerEvent as ReactPointerEvent, type RefObject, useEffect, useMemo, useRef } from 'react';
import { absolute, type Universe } from '#engine/model/address.ts';
import { aimOfPoint, type Carry, type RibbonPlaces, slotOfX } from '../../universes/carry.ts';
import type { Block } from '../../universes/ribbon-blocks.ts';

/** Pixels a pointer goes before it drags, so that a press with an unsteady hand stays a press. */
const STEADY = 4;
/** Within so many pixels of the upper or lower edge the ribbons scroll by themselves. */
const EDGE = 36;

export interface DragGround {
  readonly carry: Carry;
  readonly scroller: RefObject<HTMLElement | null>;
  readonly universes: readonly Universe[];
  /** Height of a line in pixels. */
  readonly line: number;
  /** Called when a block was let go. */
  readonly onPut: () => void;
}

/** Lets mouse and pen carry blocks. A finger scrolls, as it does everywhere. */
export function useDrag(ground: DragGround): (event: ReactPointerEvent, block: Block, universe: Universe) => void {
  const now = useRef(ground);
  const stop = useRef<() => void>(undefined);
  useEffect(() => {
    now.current = ground;
  });
  useEffect(() => () => stop.current?.(), []);
  return useMemo(
    () => (event, block, universe) => {
      const strip = event.currentTarget.closest('ul');
      if (event.button !== 0 || event.pointerType === 'touch' || strip === null) return;
      stop.current?.();
      const { left, width } = strip.getBoundingClientRect();
      const press: Press = { x: event.clientX, y: event.clientY, block, universe, left, length: width };
      stop.current = drag(press, () => now.current);
    },
    [],
  );
}

interface Press {
  readonly x: number;
  readonly y: number;
  readonly block: Block;
  readonly universe: Universe;
  readonly left: number;
  readonly length: number;
}

/** Follows one press until it is let go; answers with how to break it off. */
function drag(press: Press, ground: () => DragGround): () => void {
  const { seat } = press.block;
  const grip = slotOfX(press.x, press.left, press.length) - seat.first;
  const stopping = new AbortController();
  const { signal } = stopping;
  let at = { x: press.x, y: press.y };
  let frame = 0;
  const isCarrying = () => frame !== 0;
  const aim = () => {
    const { carry, universes } = ground();
    const target = aimOfPoint(at, grip, placesOf(press, ground()), universes);
    if (target !== undefined) carry.aim(target);
  };
  const follow = () => {
    const by = edgeStep(ground().scroller.current, at.y);
    if (by !== 0) {
      ground().scroller.current?.scrollBy(0, by);
      aim();
    }
    frame = requestAnimationFrame(follow);
  };
  const stop = () => {
    stopping.abort();
    cancelAnimationFrame(frame);
  };
  const breakOff = () => {
    if (signal.aborted) return;
    stop();
    if (isCarrying()) ground().carry.leave();
  };
  const move = (event: PointerEvent) => {
    at = { x: event.clientX, y: event.clientY };
    if (!isCarrying()) {
      if (Math.hypot(at.x - press.x, at.y - press.y) < STEADY) return;
      if (!ground().carry.pickUp(seat, absolute(press.universe, seat.first), 'pointer')) return stop();
      frame = requestAnimationFrame(follow);
    }
    event.preventDefault();
    aim();
  };
  const letGo = () => {
    stop();
    if (!isCarrying()) return;
    swallowClick();
    ground().carry.put();
    ground().onPut();
  };
  const key = (event: KeyboardEvent) => {
    if (!isCarrying()) return;
    event.preventDefault();
    event.stopPropagation();
    if (event.key === 'Escape') breakOff();
  };
  window.addEventListener('pointermove', move, { signal });
  window.addEventListener('pointerup', letGo, { signal });
  window.addEventListener('pointercancel', breakOff, { signal });
  window.addEventListener('blur', breakOff, { signal });
  window.addEventListener('keydown', key, { signal, capture: true });
  return breakOff;
}

function placesOf({ left, length }: Press, { scroller, line }: DragGround): RibbonPlaces {
  const node = scroller.current;
  const top = node === null ? 0 : node.getBoundingClientRect().top - node.scrollTop;
  return { left, length, top, line };
}

/** How far to scroll in this frame, further the nearer the edge is. */
function edgeStep(scroller: HTMLElement | null, y: number): number {
  if (scroller === null) return 0;
  const { top, bottom } = scroller.getBoundingClientRect();
  if (y < top + EDGE) return -Math.ceil(Math.min(EDGE, top + EDGE - y) / 3);
  return y > bottom - EDGE ? Math.ceil(Math.min(EDGE, y - bottom + EDGE) / 3) : 0;
}

/** The press that ends a drag is no press of the block under it. */
function swallowClick(): void {
  const swallow = (event: MouseEvent) => event.stopPropagation();
  window.addEventListener('click', swallow, { capture: true, once: true });
  setTimeout(() => window.removeEventListener('click', swallow, { capture: true }), 0);
}
