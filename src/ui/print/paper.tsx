import { useEffect } from 'react';
import { createPortal } from 'react-dom';
import type { FootLine, Sheet, SheetCell, SheetTable } from '#engine/sheet/sheet.ts';
import { countedSeverity } from '#words/findings.ts';
import { NOTHING_STANDS, sheetHeading, sheetPartTitle } from '#words/sheets.ts';

export interface PaperProps {
  readonly sheet: Sheet;
  /** The lines above it: what it is, of which rig, when it was made. */
  readonly head: readonly string[];
  /** Called when the browser is done with printing. */
  readonly onDone: () => void;
}

/** A sheet as it is printed: it stands beside the page, unseen, and takes its place on paper. */
export function Paper({ sheet, head, onDone }: PaperProps) {
  useEffect(() => {
    window.addEventListener('afterprint', onDone, { once: true });
    window.print();
    return () => window.removeEventListener('afterprint', onDone);
  }, [onDone]);
  const [title, ...about] = head;
  const paper = (
    <article className="paper">
      <h1>{title}</h1>
      <p>{about.join(' · ')}</p>
      {(sheet.tables ?? [sheet]).map((table) => (
        <PaperTable key={'part' in table ? table.part : sheet.kind} table={table} />
      ))}
      <Foot foot={sheet.foot} />
    </article>
  );
  return createPortal(paper, document.body);
}

function PaperTable({ table }: { readonly table: Sheet | SheetTable }) {
  if (table.length === 0) return null;
  const { rows, columns } = withoutEmpty(table);
  return (
    <section>
      {'part' in table ? <h2>{sheetPartTitle(table.part)}</h2> : null}
      <table>
        <thead>
          <tr>
            {columns.map((column) => (
              <th key={column}>{sheetHeading(column)}</th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ key, cells }) => (
            <tr key={key}>
              {cells.map((cell, at) => (
                <td key={columns[at]}>{cell}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

/** Columns in which no row has anything are left off: paper is narrow. */
function withoutEmpty({ rows, columns }: Sheet | SheetTable) {
  const all = [...rows];
  const isEmpty = (cell: SheetCell | undefined) => cell === undefined || cell === null || cell === '';
  const shown = columns.map((_, at) => at).filter((at) => all.some((row) => !isEmpty(row[at])));
  return {
    columns: shown.flatMap((at) => columns[at] ?? []),
    rows: all.map((row, key) => ({ key, cells: shown.map((at) => row[at]) })),
  };
}

/** What to mind, then what the check found. */
function Foot({ foot }: { readonly foot: readonly FootLine[] }) {
  const cautions = foot.filter((line) => line.kind === 'caution');
  const findings = foot.filter((line) => line.kind === 'finding');
  return (
    <footer>
      {cautions.map(({ type, text }) => (
        <p key={`${type} ${text}`}>{type === '' ? text : `${type}: ${text}`}</p>
      ))}
      {findings.length === 0 ? <p>{NOTHING_STANDS}</p> : null}
      <ul>
        {findings.map(({ severity, text }) => (
          <li key={text}>
            {countedSeverity(1, severity).slice(2)}: {text}
          </li>
        ))}
      </ul>
    </footer>
  );
}
