import { createRoot } from 'react-dom/client';
import { countingIds } from '#base/random-id.ts';
import { createDraftDoc } from '#document/draft/draft-doc.ts';
import { draftOfType } from '#engine/draft/draft-of-type.ts';
import { GENERIC_TYPES } from '#engine/type/generic-types.ts';
import { DraftScreen } from '#ui/drafts/draft-screen.tsx';
import { openDraftStore } from '#ui/live/draft-store.ts';
import { linkAlone } from '#ui/live/link-alone.ts';

const [, at] = /base=(\d+)/.exec(location.search) ?? [];
const base = at === undefined ? null : (GENERIC_TYPES[Number(at)] ?? null);
const doc = createDraftDoc(base === null ? [] : draftOfType(base, countingIds('d')));
const link = linkAlone();
const store = openDraftStore({ doc, link, origin: 'me', base });
const asked: string[] = [];
const door = { busy: false, refused: undefined } as const;
const doors = {
  publish: { ...door, ask: (note: string) => void asked.push(`publish ${note}`) },
  drop: { ...door, ask: () => void asked.push('drop') },
};
Object.assign(window, { store, link, asked });
const root = document.getElementById('root');
if (location.search.includes('dark')) document.documentElement.dataset.theme = 'dark';
if (root) {
  createRoot(root).render(
    <main className="px-4 py-5 sm:px-5">
      <h1 className="pb-3 text-title">New fixture type</h1>
      <DraftScreen store={store} doors={doors} />
    </main>,
  );
}
