import { type DragEvent, type ReactNode, useId } from 'react';
import { UPLOAD_WORDS } from '#words/library.ts';
import { LinkButton } from '../../kit/link-button.tsx';
import { Part } from '../part.tsx';
import { FileFate } from './file-fate.tsx';
import { type QueuedFile, useFileQueue } from './use-file-queue.ts';

export interface BringFilesProps {
  readonly crewId: string;
  /** Other ways in, beside the button. */
  readonly children: ReactNode;
}

/** Brings in GDTF files, chosen or dropped, and says of each what became of it until that is put away. */
export function BringFiles({ crewId, children }: BringFilesProps) {
  const id = useId();
  const { files, add, clear } = useFileQueue(crewId);
  const drop = (event: DragEvent) => {
    event.preventDefault();
    add([...event.dataTransfer.files]);
  };
  return (
    <div className="flex flex-col gap-4">
      <section
        aria-label={UPLOAD_WORDS.choose}
        onDragOver={(event) => event.preventDefault()}
        onDrop={drop}
        className="flex flex-wrap items-center gap-3 border border-edge border-dashed bg-sheet p-3"
      >
        <label
          htmlFor={id}
          className="inline-flex min-h-control cursor-pointer items-center rounded-control border border-ink bg-ink px-3 font-medium text-sheet has-focus-visible:outline-2 has-focus-visible:outline-offset-2 has-focus-visible:outline-ink"
        >
          {UPLOAD_WORDS.choose}
          <input
            id={id}
            type="file"
            multiple
            accept=".gdtf"
            className="sr-only"
            onChange={(event) => {
              const input = event.currentTarget;
              add([...(input.files ?? [])]);
              input.value = ''; // so that the same file, corrected, can be chosen again
            }}
          />
        </label>
        <span className="mr-auto text-soft max-sm:hidden">{UPLOAD_WORDS.drop}</span>
        {children}
      </section>
      {files.length === 0 ? null : <Fates files={files} clear={clear} />}
    </div>
  );
}

function Fates({ files, clear }: { readonly files: readonly QueuedFile[]; readonly clear: () => void }) {
  const done = files.filter((file) => typeof file.state !== 'string').length;
  return (
    <Part
      title={UPLOAD_WORDS.report}
      actions={done === 0 ? undefined : <LinkButton onClick={clear}>{UPLOAD_WORDS.clear}</LinkButton>}
    >
      <p role="status" className="py-1 text-soft">
        {UPLOAD_WORDS.sent(done, files.length)}
      </p>
      <ul className="flex flex-col gap-3">
        {files.map((file) => (
          <FileFate key={file.key} file={file} />
        ))}
      </ul>
    </Part>
  );
}
