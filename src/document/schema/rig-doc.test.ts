import { describe, expect, it } from 'vitest';
import * as Y from 'yjs';
import { createRigDoc, FORMAT, formatOf } from './rig-doc.ts';

describe('formatOf', () => {
  it('[DO1] a new rig document is of the current format', () => {
    expect(formatOf(createRigDoc())).toBe('current');
  });

  it.each<[string, unknown]>([
    ['newer', FORMAT + 1],
    ['newer', 1000],
    ['none', 0],
    ['none', -1],
    ['none', FORMAT + 0.5],
    ['none', String(FORMAT)],
    ['none', null],
    ['none', Number.POSITIVE_INFINITY],
  ])('[DO2] says %s of format %j', (wanted, format) => {
    const doc = new Y.Doc();
    doc.getMap('meta').set('format', format);
    expect(formatOf(doc)).toBe(wanted);
  });

  it('[DO2] says none of a document in which nothing has arrived', () => {
    expect(formatOf(new Y.Doc())).toBe('none');
  });
});
