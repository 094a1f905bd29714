import { createRoot } from 'react-dom/client';
import { applyPlan } from '#document/edit/apply-plan.ts';
import { createRigDoc } from '#document/schema/rig-doc.ts';
import { absolute, SLOTS } from '#engine/model/address.ts';
import type { Edit } from '#engine/model/edit.ts';
import { fixtureId } from '#engine/model/ids.ts';
import { linkAlone } from '#ui/live/link-alone.ts';
import { openRigStore } from '#ui/live/rig-store.ts';
import { Universes } from '#ui/panels/universes/universes.tsx';

// The page of the bench `ribbons`: `?universes=2000#all`.
const UNIVERSES = Number(new URLSearchParams(location.search).get('universes') ?? 20);
const FOOTPRINT = 24;
/** Full but for the last slots. */
const UNITS = Math.floor(SLOTS / FOOTPRINT);

function fullRig(): readonly Edit[] {
  const mode = { kind: 'set-mode', type: 'Corvine spot', mode: 'Basic 24', footprints: [FOOTPRINT] } as const;
  const units = Array.from({ length: UNIVERSES * UNITS }, (_, n): Edit => {
    const universe = 1 + Math.floor(n / UNITS);
    const address = absolute(universe, 1 + (n % UNITS) * FOOTPRINT);
    const cells = {
      order: n,
      channel: n + 1,
      position: `LX ${universe}`,
      type: 'Corvine spot',
      mode: 'Basic 24',
      address,
    };
    return { kind: 'add-fixture', fixture: fixtureId(`row${n}`), cells };
  });
  return [mode, ...units];
}

/** Milliseconds from each frame to the next, while watched. */
const frames: number[] = [];
let watching = false;

function watch(): void {
  watching = true;
  let before: number | undefined;
  const follow = (now: number) => {
    if (before !== undefined) frames.push(now - before);
    before = now;
    if (watching) requestAnimationFrame(follow);
  };
  requestAnimationFrame(follow);
}

function start(): void {
  const doc = createRigDoc();
  applyPlan(doc, { name: 'import', edits: fullRig() }, 'seed');
  const store = openRigStore({
    doc,
    link: linkAlone(),
    origin: 'me',
    isMine: (client) => client === doc.clientID,
    clock: Date,
  });
  const stop = () => {
    watching = false;
    return frames.splice(0);
  };
  Object.assign(window, { frames: { watch, stop } });
  const root = document.getElementById('root');
  if (root === null) throw new Error('the page has no root');
  createRoot(root).render(
    <main className="flex h-dvh flex-col">
      <Universes store={store} rigId="bench" />
    </main>,
  );
}

start();
