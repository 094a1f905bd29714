import { createRoot } from 'react-dom/client';
import { rowsOf } from '#base/table.ts';
import { demoPlan } from '#demo/demo-rig.ts';
import { demoRevisions } from '#demo/types/demo-types.ts';
import { applyPlan } from '#document/edit/apply-plan.ts';
import { createRigDoc } from '#document/schema/rig-doc.ts';
import { linkAlone } from '#ui/live/link-alone.ts';
import { openRigStore, type RigStore } from '#ui/live/rig-store.ts';
import { Network } from '#ui/panels/network/network.tsx';
import { Supply } from '#ui/panels/supply/supply.tsx';
import { Universes } from '#ui/panels/universes/universes.tsx';
import { SheetScreen } from '#ui/workspace/sheet-screen.tsx';

/** The browser's own SHA-256. */
async function sha256(text: string): Promise<string> {
  const digest = await crypto.subtle.digest('SHA-256', new TextEncoder().encode(text));
  return [...new Uint8Array(digest)].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}

async function open(): Promise<void> {
  const doc = createRigDoc();
  if (!location.search.includes('empty')) applyPlan(doc, demoPlan(await demoRevisions(sha256)), 'seed');
  const link = linkAlone();
  const store = openRigStore({ doc, link, origin: 'me', isMine: (client) => client === doc.clientID, clock: Date });
  const byChannel = (channel: number) => [...rowsOf(store.rig().fixtures)].find((row) => row.channel === channel);
  Object.assign(window, { store, link, doc, byChannel });
  const root = document.getElementById('root');
  if (location.search.includes('dark')) document.documentElement.dataset.theme = 'dark';
  if (root) {
    createRoot(root).render(
      <main className="flex h-dvh flex-col">
        <h1 className="px-5 py-4 text-title">The Lantern Tide</h1>
        <Screen store={store} />
      </main>,
    );
  }
}

const keeper = { load: () => null, save: () => undefined };

/** The page that the address asks for. */
function Screen({ store }: { readonly store: RigStore }) {
  if (location.search.includes('universes')) return <Universes store={store} rigId="lantern" />;
  if (location.search.includes('network')) {
    return (
      <div className="min-h-0 flex-1 overflow-y-auto px-4 py-5 sm:px-5">
        <Network store={store} rigId="lantern" />
      </div>
    );
  }
  if (location.search.includes('supply')) return <Supply store={store} rigId="lantern" />;
  return <SheetScreen store={store} keeper={keeper} listsIn={<a href="/lists-in">Lists in</a>} />;
}

void open();
