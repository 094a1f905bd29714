import { type TypeRevisionSummary, typeFilePath } from '#wire/library.ts';
import { TYPE_WORDS } from '#words/library.ts';
import { sayMoment } from '#words/screens.ts';
import { type Column, Table } from '../../kit/table.tsx';
import { LINK_CLASSES } from '../../kit/text-link.tsx';
import { Part } from '../part.tsx';

export interface RevisionsPartProps {
  readonly crewId: string;
  readonly typeId: string;
  /** Newest first. */
  readonly revisions: readonly TypeRevisionSummary[];
}

/** Every revision of a type: who made it, when, where from, and what they noted. */
export function RevisionsPart({ crewId, typeId, revisions }: RevisionsPartProps) {
  if (revisions.every((each) => each.origin === 'built-in')) return null;
  const columns: readonly Column<TypeRevisionSummary>[] = [
    { key: 'number', heading: TYPE_WORDS.revision, numeric: true, cell: (each) => each.number },
    { key: 'when', heading: TYPE_WORDS.when, cell: (each) => sayMoment(each.at) },
    { key: 'who', heading: TYPE_WORDS.who, cell: (each) => `${each.by}, ${TYPE_WORDS.origins[each.origin]}` },
    { key: 'note', heading: TYPE_WORDS.note, cell: (each) => each.note },
    {
      key: 'file',
      heading: TYPE_WORDS.file,
      cell: (each) => (
        <a
          href={typeFilePath(crewId, typeId, each.number)}
          download
          aria-label={TYPE_WORDS.saveRevision(each.number)}
          className={LINK_CLASSES}
        >
          {TYPE_WORDS.saveShort}
        </a>
      ),
    },
  ];
  return (
    <Part title={TYPE_WORDS.revisions}>
      <Table
        caption={TYPE_WORDS.revisions}
        columns={columns}
        rows={revisions}
        keyOf={(each) => String(each.number)}
        rowName="number"
      />
    </Part>
  );
}
