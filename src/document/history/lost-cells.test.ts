import { describe, expect, it } from 'vitest';
import * as Y from 'yjs';
import { type Rng, seededRng } from '#base/rng.ts';
import { getRow } from '#base/table.ts';
import type { Edit } from '#engine/model/edit.ts';
import { fixtureId } from '#engine/model/ids.ts';
import { createDocPeers } from '#tests/support/doc-peers.ts';
import { applyPlan } from '../edit/apply-plan.ts';
import { readRig } from '../read/rig-reader.ts';
import { createHistory } from './history.ts';
import { watchLostCells } from './lost-cells.ts';

const f1 = fixtureId('f1');
const clock = { now: () => 1000 };
const write = (doc: Y.Doc, ...edits: Edit[]) => applyPlan(doc, { name: 'edit', edits }, doc);
const set = (value: number | null): Edit => ({ kind: 'set-cell', fixture: f1, field: 'channel', value });
const remove: Edit = { kind: 'remove-fixture', fixture: f1 };

/** What a person at a document is told, as lines: `mine 5, theirs 9`, or `row channel`. */
function told(doc: Y.Doc, mine: (client: number) => boolean = (client) => client === doc.clientID) {
  const lines: string[] = [];
  const watch = watchLostCells(doc, mine, clock);
  watch.onLost((lost) => lines.push(...lost.map((cell) => `mine ${cell.mine}, theirs ${cell.theirs}`)));
  watch.onLostRow((lost) => lines.push(...lost.map(({ row, fields }) => `row ${row.id}: ${fields.join(' ')}`)));
  return lines;
}

const readCell = (doc: Y.Doc) => getRow(readRig(doc).fixtures, f1)?.channel;

/** Four writes by whom chance picks; answers with the last value of each. */
function writeByChance(rng: Rng, docs: readonly Y.Doc[], from: number): ReadonlyMap<Y.Doc, number> {
  const last = new Map<Y.Doc, number>();
  for (let value = from; value < from + 4; value++) {
    const doc = rng.pick(docs);
    last.set(doc, value);
    write(doc, set(value));
  }
  return last;
}

/** Peers that all have one fixture; of two writes at once that of the higher client id stays. */
function peers(...clients: number[]) {
  const net = createDocPeers(clients);
  const [a, b, c = new Y.Doc()] = net.docs;
  if (a === undefined || b === undefined) throw new Error('two documents at least');
  write(a, { kind: 'add-fixture', fixture: f1, cells: { channel: 1 } });
  net.deliverAll();
  return { net, a, b, c, toldA: told(a), toldB: told(b), toldC: told(c) };
}

describe('lost cells', () => {
  it('[DO40] tells the one whose value lost, and nobody else', () => {
    const { net, a, b, toldA, toldB } = peers(1, 2);
    write(a, set(5));
    write(b, set(9));
    net.deliverAll();
    expect([toldA, toldB]).toEqual([['mine 5, theirs 9'], []]);
  });

  it('[DO40] with the cell written before, and a value that was cleared', () => {
    const { net, a, b, toldA, toldB } = peers(2, 1);
    write(a, set(3));
    net.deliverAll();
    write(a, set(5));
    write(b, set(null));
    net.deliverAll();
    expect([toldA, toldB]).toEqual([[], ['mine null, theirs 5']]);
  });

  it('[DO41] an overwrite by somebody who had my value is an ordinary edit', () => {
    const { net, a, b, toldA, toldB } = peers(1, 2);
    write(a, set(5));
    net.deliverAll();
    write(b, set(9));
    net.deliverAll();
    write(a, set(6));
    write(a, set(7));
    net.deliverAll();
    expect([toldA, toldB]).toEqual([[], []]);
  });

  it('[DO41] losing to the same value is no loss', () => {
    const { net, a, b, toldA, toldB } = peers(1, 2);
    write(a, set(5));
    write(b, set(5));
    net.deliverAll();
    expect([toldA, toldB]).toEqual([[], []]);
  });

  it('[DO42] after an offline stretch of several writes, tells the last value of mine once', () => {
    const { net, a, b, toldA, toldB } = peers(1, 2);
    for (const value of [5, 6, 7]) write(a, set(value));
    for (const value of [9, 10]) write(b, set(value));
    net.deliverAll();
    // Their two writes arrive one by one: what is told is the one that mine lost to.
    expect([toldA, toldB]).toEqual([['mine 7, theirs 9'], []]);
  });

  it('[DO42] another write of theirs over the one that beat mine, received at once, is told as theirs', () => {
    const { net, a, b, toldA } = peers(1, 2);
    write(a, set(5));
    write(b, set(9));
    net.deliverTo(1);
    write(b, set(10));
    const all = Y.encodeStateAsUpdate(b);
    Y.applyUpdate(a, all, 'network');
    expect(toldA).toEqual(['mine 5, theirs 10']);
  });

  it('[DO43] works across a reload: the client ids of earlier sessions are mine', () => {
    const { net, a, b } = peers(1, 2);
    write(a, set(5));
    write(b, set(9));
    const reloaded = new Y.Doc();
    const lines = told(reloaded, (client) => client === 1 || client === reloaded.clientID);
    Y.applyUpdate(reloaded, Y.encodeStateAsUpdate(a), 'this device');
    expect(lines).toEqual([]);
    Y.applyUpdate(reloaded, Y.encodeStateAsUpdate(b), 'network');
    expect(lines).toEqual(['mine 5, theirs 9']);
    const again = new Y.Doc();
    const linesAgain = told(again, (client) => client === 1);
    Y.applyUpdate(again, Y.encodeStateAsUpdate(reloaded), 'this device');
    expect(linesAgain).toEqual([]);
    net.deliverAll();
  });

  it('[DO43] two windows of one person do not tell each other', () => {
    const { net, a, b } = peers(1, 2);
    const lines = told(a, (client) => client === 1 || client === 2);
    write(a, set(5));
    write(b, set(9));
    net.deliverAll();
    expect(lines).toEqual([]);
  });

  it('[DO44] of three writes at once every loser is told once, in any order of arrival, and one value stays', () => {
    for (let seed = 1; seed <= 60; seed++) {
      const rng = seededRng(seed);
      const { net, a, b, c, toldA, toldB, toldC } = peers(1, 2, 3);
      write(a, set(101));
      write(b, set(102));
      write(c, set(103));
      while (net.deliverOne(rng));
      expect([toldA.length, toldB.length, toldC.length], `seed ${seed}`).toEqual([1, 1, 0]);
      expect(toldA[0]).toMatch(/^mine 101, theirs 10[23]$/);
      expect(toldB[0]).toBe('mine 102, theirs 103');
    }
  });

  it('[DO44] law: of all who write before hearing of each other, each but one is told their last value, once', () => {
    for (let seed = 1; seed <= 100; seed++) {
      const rng = seededRng(seed);
      const { net, a, b, c, toldA, toldB, toldC } = peers(...[1, 2, 3].sort(() => rng.next() - 0.5));
      const people = [a, b, c].map((doc, i) => ({ doc, told: [toldA, toldB, toldC][i] ?? [] }));
      for (let round = 1; round <= 5; round++) {
        const last = writeByChance(rng, [a, b, c], round * 10);
        while (net.deliverOne(rng));
        const stays = readCell(a);
        for (const { doc, told: lines } of people) {
          const mine = last.get(doc);
          const wanted = [mine]
            .filter((value) => value !== undefined && value !== stays)
            .map((value) => `mine ${value}`);
          expect(
            lines.splice(0).map((line) => line.split(',')[0]),
            `seed ${seed} round ${round}`,
          ).toEqual(wanted);
        }
      }
    }
  });

  it('[DO45] a row removed by somebody who had not seen my cell is told with the row and its cells', () => {
    const { net, a, b, toldA, toldB } = peers(1, 2);
    write(a, set(5));
    write(b, remove);
    net.deliverAll();
    expect([toldA, toldB]).toEqual([['row f1: channel'], []]);
  });

  it('[DO45] a row removed by somebody who had seen my cell is an ordinary removal', () => {
    const { net, a, b, toldA, toldB } = peers(1, 2);
    write(a, set(5));
    net.deliverAll();
    write(b, remove);
    net.deliverAll();
    expect([toldA, toldB]).toEqual([[], []]);
  });

  it('[DO45] a redone removal lists what was seen when it was redone', () => {
    const { net, a, b, toldA } = peers(1, 2);
    const history = createHistory(b, b);
    write(b, remove);
    history.undo();
    net.deliverAll();
    write(a, { kind: 'set-cell', fixture: f1, field: 'unit', value: '4' });
    history.redo();
    net.deliverAll();
    expect(toldA).toEqual(['row f1: unit']);
  });

  it('[DO45] two removals at once of a row I wrote into are told once', () => {
    const { net, a, b, c, toldA } = peers(1, 2, 3);
    write(a, set(5));
    write(b, remove);
    write(c, remove);
    net.deliverAll();
    expect(toldA).toEqual(['row f1: channel']);
  });
});
