import { useParams } from 'next/navigation';
import type { FileTaken } from '#wire/library.ts';
import { takenSentence, UPLOAD_WORDS } from '#words/library.ts';
import { Mark } from '../../kit/mark.tsx';
import type { Said } from '../../kit/message.tsx';
import { TextLink } from '../../kit/text-link.tsx';
import { typePath } from './library-address.ts';
import { ReportLists } from './report-lists.tsx';
import type { QueuedFile } from './use-file-queue.ts';

/** What became of one file. */
export function FileFate({ file: { name, state } }: { readonly file: QueuedFile }) {
  return (
    <li className="border-b border-rule pb-2">
      <p className="font-medium [overflow-wrap:anywhere]">{name}</p>
      {typeof state === 'string' ? (
        <p className="text-soft">{UPLOAD_WORDS[state]}</p>
      ) : 'refused' in state ? (
        <Refused said={state.refused} />
      ) : (
        <Taken taken={state.taken} />
      )}
    </li>
  );
}

function Refused({ said }: { readonly said: Said }) {
  return (
    <p className="max-w-prose">
      <Mark severity="blocker" /> {said.what} {said.next}
    </p>
  );
}

function Taken({ taken }: { readonly taken: FileTaken }) {
  const { crew } = useParams<{ crew: string }>();
  return (
    <>
      <p className="max-w-prose">
        {takenSentence(taken)} <TextLink href={typePath(crew, taken.type.id)}>{UPLOAD_WORDS.openType}</TextLink>
      </p>
      <ReportLists report={taken.report} />
    </>
  );
}
