import { useMemo, useState } from 'react';
import { formatCell } from '#engine/model/cell-text.ts';
import { ADDRESS_FIELDS } from '#engine/model/field.ts';
import type { Fixture } from '#engine/model/fixture.ts';
import { foldName } from '#engine/model/ids.ts';
import { cellOf } from '#engine/model/read-fixture.ts';
import type { Rig } from '#engine/model/rig.ts';
import { rowsInOrder } from '#engine/model/row-order.ts';
import { unitName } from '#words/findings.ts';
import { MOMENT_WORDS as words } from '#words/history.ts';
import { COLUMN_WORDS } from '#words/sheet.ts';
import { LinkButton } from '../../kit/link-button.tsx';
import { type Column, Table } from '../../kit/table.tsx';
import { TextField } from '../../kit/text-field.tsx';
import { Part } from '../part.tsx';

const STEP = 100;

/** The units of a rig to be read, in the order of its sheet: the first of them, and those that are looked for. */
export function MomentUnits({ rig }: { readonly rig: Rig }) {
  const [find, setFind] = useState('');
  const [most, setMost] = useState(STEP);
  const rows = useMemo(() => rowsInOrder(rig), [rig]);
  const wanted = foldName(find);
  const found = wanted === '' ? rows : rows.filter((row) => foldName(`${unitName(row)} ${row.type}`).includes(wanted));
  return (
    <Part title={words.units(rows.length)}>
      {rows.length === 0 ? (
        <p className="py-2">{words.noUnits}</p>
      ) : (
        <>
          <div className="max-w-80 py-2">
            <TextField label={words.find} value={find} autoComplete="off" onText={setFind} />
          </div>
          {found.length === 0 ? (
            <p>{words.notFound}</p>
          ) : (
            <Table
              caption={words.units(found.length)}
              rowName="unit"
              keyOf={({ id }) => id}
              columns={COLUMNS}
              rows={found.slice(0, most)}
            />
          )}
          {found.length > most ? (
            <LinkButton onClick={() => setMost(most + STEP * 4)}>
              {words.more(Math.min(STEP * 4, found.length - most))}
            </LinkButton>
          ) : null}
        </>
      )}
    </Part>
  );
}

const addressesOf = (row: Fixture) =>
  ADDRESS_FIELDS.map((field) => formatCell(field, cellOf(row, field)))
    .filter((text) => text !== '')
    .join(' · ');

const COLUMNS: readonly Column<Fixture>[] = [
  { key: 'unit', heading: COLUMN_WORDS.unit.name, cell: unitName },
  { key: 'address', heading: COLUMN_WORDS.address.name, cell: (row) => <b>{addressesOf(row)}</b> },
  { key: 'channel', heading: COLUMN_WORDS.channel.name, numeric: true, cell: ({ channel }) => channel ?? '' },
  { key: 'type', heading: COLUMN_WORDS.type.name, cell: ({ type }) => type },
  { key: 'mode', heading: COLUMN_WORDS.mode.name, cell: ({ mode }) => mode, wideOnly: true },
  { key: 'purpose', heading: COLUMN_WORDS.purpose.name, cell: ({ purpose }) => purpose, wideOnly: true },
  { key: 'circuit', heading: COLUMN_WORDS.circuit.name, cell: ({ circuit }) => circuit, wideOnly: true },
];
