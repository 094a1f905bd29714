import { useEffect, useState, useSyncExternalStore } from 'react';
import { createRoot } from 'react-dom/client';
import * as Y from 'yjs';
import { countingIds } from '#base/random-id.ts';
import { seededRng } from '#base/rng.ts';
import { applyPlan } from '#document/edit/apply-plan.ts';
import { createRigDoc } from '#document/schema/rig-doc.ts';
import { absolute } from '#engine/model/address.ts';
import type { Edit } from '#engine/model/edit.ts';
import { PERSON_FIELDS, type PersonField } from '#engine/model/field.ts';
import { type FixtureId, fixtureId } from '#engine/model/ids.ts';
import { rowsInOrder } from '#engine/model/row-order.ts';
import { Grid } from '#ui/grid/grid.tsx';
import { createSheet } from '#ui/grid/sheet.ts';
import { linkAlone } from '#ui/live/link-alone.ts';
import { openRigStore, type RigStore } from '#ui/live/rig-store.ts';
import { cellText } from '#ui/live/rows/cell-text.ts';
import { MarginCell } from '#ui/workspace/margin-cell.tsx';

// The page of the bench `grid`: `?rows=20000`, or `?rows=2000&plain` for a table without any of our means.
const query = new URLSearchParams(location.search);
const ROWS = Number(query.get('rows') ?? 200);
/** Rows near the top, of which the window shows most: every fifth edit of others is to one of them, however long the sheet. */
const NEAR = 25;
const FOOTPRINT = 16;
/** Milliseconds from one edit of others to the next: 50 a second. */
const EVERY = 20;
const MOVED: readonly PersonField[] = ['purpose', 'address', 'channel', 'circuit', 'notes'];

const rowId = (n: number): FixtureId => fixtureId(`row${n}`);

function seededDoc(): Y.Doc {
  const doc = createRigDoc();
  const modes: Edit[] = [{ kind: 'set-mode', type: 'Corvine spot', mode: 'Basic 16', footprints: [FOOTPRINT] }];
  const rows = Array.from({ length: ROWS }, (_, n): Edit => {
    const cells = {
      order: n,
      channel: n + 1,
      position: `LX ${1 + Math.floor(n / 40)}`,
      unit: String(1 + (n % 40)),
      type: 'Corvine spot',
      mode: 'Basic 16',
      address: absolute(1 + Math.floor(n / 32), 1 + (n % 32) * FOOTPRINT),
      purpose: 'Specials',
      circuit: `C${n % 24}`,
    };
    return { kind: 'add-fixture', fixture: rowId(n), cells };
  });
  applyPlan(doc, { name: 'import', edits: [...modes, ...rows] }, 'seed');
  return doc;
}

/** What others send, made beforehand: one cell each. */
function editsOfOthers(doc: Y.Doc, count: number): readonly Uint8Array[] {
  const theirs = new Y.Doc();
  Y.applyUpdate(theirs, Y.encodeStateAsUpdate(doc));
  const updates: Uint8Array[] = [];
  theirs.on('update', (bytes: Uint8Array) => updates.push(bytes));
  const rng = seededRng(17);
  for (let n = 0; n < count; n++) {
    const row = n % 5 === 0 ? rng.int(NEAR) : rng.int(ROWS);
    const field = rng.pick(MOVED);
    const value =
      field === 'address'
        ? absolute(1 + rng.int(600), 1 + rng.int(490))
        : field === 'channel'
          ? 1 + rng.int(60_000)
          : `by others ${n}`;
    applyPlan(theirs, { name: 'edit', edits: [{ kind: 'set-cell', fixture: rowId(row), field, value }] }, 'theirs');
  }
  return updates;
}

/** Milliseconds from each key to the paint after it. */
const paints: number[] = [];
function watchPaints(): void {
  const channel = new MessageChannel();
  const waiting: number[] = [];
  channel.port1.onmessage = () => {
    const now = performance.now();
    for (const from of waiting.splice(0)) paints.push(now - from);
  };
  window.addEventListener(
    'keydown',
    ({ timeStamp }) => {
      requestAnimationFrame(() => {
        waiting.push(timeStamp);
        channel.port2.postMessage(null);
      });
    },
    { capture: true },
  );
}

/** A table as one writes it first: all rows drawn, all drawn again when anything changes. */
function PlainTable({ store }: { readonly store: RigStore }) {
  const rig = useSyncExternalStore(store.subscribe, store.rig);
  const [at, setAt] = useState(0);
  const [text, setText] = useState<string>();
  const rows = rowsInOrder(rig);
  const press = ({ key }: KeyboardEvent) => {
    const row = rows[at];
    if (key === 'ArrowDown') setAt(Math.min(rows.length - 1, at + 1));
    else if (key === 'ArrowUp') setAt(Math.max(0, at - 1));
    else if (key === 'Enter' && text !== undefined && row) {
      store.apply({ name: 'edit', edits: [{ kind: 'set-cell', fixture: row.id, field: 'purpose', value: text }] });
      setText(undefined);
    } else if (key.length === 1) setText((text ?? '') + key);
  };
  useEffect(() => {
    window.addEventListener('keydown', press);
    return () => window.removeEventListener('keydown', press);
  });
  return (
    <div className="h-dvh overflow-auto">
      <table>
        <tbody>
          {rows.map((row, n) => (
            <tr key={row.id} className={n === at ? 'bg-selected' : ''}>
              {PERSON_FIELDS.map((field) => (
                <td key={field}>
                  {n === at && field === 'purpose' && text !== undefined ? text : cellText(rig, row, field)}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

function start(): void {
  const doc = seededDoc();
  const updates = editsOfOthers(doc, Number(query.get('edits') ?? 3000));
  const store = openRigStore({
    doc,
    link: linkAlone(),
    origin: 'me',
    isMine: (id) => id === doc.clientID,
    clock: Date,
  });
  const sheet = createSheet(store, countingIds('new'), { load: () => null, save: () => undefined });
  sheet.open();
  let next = 0;
  let timer = 0;
  const others = {
    start: () => {
      const from = performance.now();
      // A timer that comes late makes up for it: others do not wait for this page.
      timer = window.setInterval(() => {
        for (let due = (performance.now() - from) / EVERY; next < due; next++) {
          const update = updates[next];
          if (update) Y.applyUpdate(doc, update, 'others');
        }
      }, EVERY);
    },
    stop: () => window.clearInterval(timer),
    made: () => next,
  };
  watchPaints();
  const purposes = () => rowsInOrder(store.rig()).map(({ purpose }) => purpose);
  const cells = () => document.querySelectorAll('[role="gridcell"], [role="columnheader"]').length;
  const columns = () => sheet.state().columns;
  const bench = { others, paints, purposes, cells, columns };
  Object.assign(window, { inPage: () => bench });
  const root = document.getElementById('root');
  if (root === null) throw new Error('the page has no root');
  createRoot(root).render(
    query.has('plain') ? (
      <PlainTable store={store} />
    ) : (
      <div className="@container/sheet h-dvh">
        <Grid sheet={sheet} margin={MarginCell} onBeside={() => undefined} access="writable" />
      </div>
    ),
  );
}

start();
