import { useMemo } from 'react';
import { formatCell } from '#engine/model/cell-text.ts';
import { ADDRESS_FIELDS } from '#engine/model/field.ts';
import type { Fixture } from '#engine/model/fixture.ts';
import { cellOf } from '#engine/model/read-fixture.ts';
import type { Rig } from '#engine/model/rig.ts';
import { byPlace } from '#engine/sheet/sheet-order.ts';
import { unitName } from '#words/findings.ts';
import { REVISIONS_WORDS as words } from '#words/revisions.ts';
import { type Column, Table } from '../../kit/table.tsx';
import { ShowMore, useShown } from '../../print/show-more.tsx';
import { Part } from '../part.tsx';

const addressText = (fixture: Fixture) =>
  ADDRESS_FIELDS.map((field) => formatCell(field, cellOf(fixture, field)))
    .filter((text) => text !== '')
    .join(' + ');

const COLUMNS: readonly Column<Fixture>[] = [
  { key: 'unit', heading: words.columns.unit, cell: unitName },
  { key: 'channel', heading: words.columns.channel, numeric: true, cell: ({ channel }) => channel },
  { key: 'type', heading: words.columns.type, cell: ({ type }) => type },
  { key: 'mode', heading: words.columns.mode, wideOnly: true, cell: ({ mode }) => mode },
  { key: 'address', heading: words.columns.address, cell: (fixture) => <code>{addressText(fixture)}</code> },
  { key: 'circuit', heading: words.columns.circuit, wideOnly: true, cell: ({ circuit }) => circuit },
  { key: 'run', heading: words.columns.run, wideOnly: true, cell: ({ run }) => run },
  { key: 'purpose', heading: words.columns.purpose, wideOnly: true, cell: ({ purpose }) => purpose },
];

/** The units of a frozen rig by position and number, to be read. */
export function UnitTable({ rig, number }: { readonly rig: Rig; readonly number: number }) {
  const units = useMemo(() => byPlace(rig), [rig]);
  const { shown, onMore } = useShown(units.length);
  return (
    <Part title={words.units}>
      {units.length === 0 ? (
        <p className="py-2">{words.noUnits}</p>
      ) : (
        <Table
          caption={words.unitsCaption(number)}
          columns={COLUMNS}
          rows={units.slice(0, shown)}
          keyOf={({ id }) => id}
          rowName="unit"
        />
      )}
      <ShowMore shown={shown} all={units.length} onMore={onMore} />
    </Part>
  );
}
