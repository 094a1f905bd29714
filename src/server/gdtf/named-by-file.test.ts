import { describe, expect, it } from 'vitest';
import { present } from '#base/assert.ts';
import { GENERIC_TYPES } from '#engine/type/generic-types.ts';
import { namedByFile } from './named-by-file.ts';

const named = present(GENERIC_TYPES[0], 'a generic type');
const report = { version: '1.2', read: { modes: 1, channels: 1, parts: 1 }, defects: [], moreDefects: 0 };
const imported = (maker: string, model: string) => ({
  type: { ...named, maker, model },
  report: { ...report, guesses: [], left: [], troubles: [] },
});

describe('namedByFile', () => {
  it('leaves a type alone that says its model', () => {
    const said = imported('', 'Heron');
    expect(namedByFile(said, 'Other@Name.gdtf')).toBe(said);
  });

  it.each([
    ['Corvid@Heron 3@rev 2.gdtf', '', 'Corvid', 'Heron 3'],
    ['Corvid@Heron 3.GDTF', 'Corvid Stage', 'Corvid Stage', 'Heron 3'],
    ['heron.gdtf', '', '', 'heron'],
    [' heron   three ', 'Corvid', 'Corvid', 'heron three'],
  ])('names a type after %j', (file, maker, wantedMaker, wantedModel) => {
    const taken = namedByFile(imported(maker, ' '), file);
    expect([taken?.type.maker, taken?.type.model]).toEqual([wantedMaker, wantedModel]);
    expect(taken?.report.guesses).toEqual([{ kind: 'named-by-file', name: wantedModel }]);
  });

  it.each(['', '.gdtf', 'Corvid@', '@@x'])('knows no name in %j', (file) => {
    expect(namedByFile(imported('', ''), file)).toBeUndefined();
  });
});
