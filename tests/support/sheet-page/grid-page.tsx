import { createRoot } from 'react-dom/client';
import { countingIds } from '#base/random-id.ts';
import { demoPlan } from '#demo/demo-rig.ts';
import { applyPlan } from '#document/edit/apply-plan.ts';
import { createRigDoc } from '#document/schema/rig-doc.ts';
import { Grid } from '#ui/grid/grid.tsx';
import { createSheet } from '#ui/grid/sheet.ts';
import { linkAlone } from '#ui/live/link-alone.ts';
import { openRigStore } from '#ui/live/rig-store.ts';

const doc = createRigDoc();
applyPlan(doc, demoPlan(), 'seed');
const link = linkAlone();
const store = openRigStore({ doc, link, origin: 'me', isMine: (client) => client === doc.clientID, clock: Date });
const sheet = createSheet(store, countingIds('n'), { load: () => null, save: () => undefined });
Object.assign(window, { sheet, store, link });
const root = document.getElementById('root');
if (root)
  createRoot(root).render(
    <div className="@container/sheet h-dvh">
      <Grid sheet={sheet} margin={() => null} onBeside={() => undefined} access="writable" />
    </div>,
  );
