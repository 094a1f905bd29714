import { useMutation } from '@tanstack/react-query';
import { useId, useState } from 'react';
import type { ArchiveTaken } from '#wire/crew-archive.ts';
import { ARCHIVE_WORDS } from '#words/archive.ts';
import { counted, KIT_WORDS } from '#words/screens.ts';
import { Button } from '../../kit/button.tsx';
import { Dialog } from '../../kit/dialog.tsx';
import { CONTROL_CLASSES, describedBy, FieldFrame } from '../../kit/field-frame.tsx';
import { Message } from '../../kit/message.tsx';
import { TextLink } from '../../kit/text-link.tsx';
import { sendArchive } from './send-archive.ts';

/** Brings in the archive of a crew, and leads to the crew that it becomes. */
export function ArchiveInDialog({ onClose }: { readonly onClose: () => void }) {
  const form = useId();
  const [file, setFile] = useState<File>();
  const [missing, setMissing] = useState(false);
  const [part, setPart] = useState(0);
  const send = useMutation({ mutationFn: (chosen: File) => sendArchive(chosen, setPart) });
  const answer = send.data;
  if (answer && 'taken' in answer) return <Taken taken={answer.taken} onClose={onClose} />;
  const answers = (
    <>
      <Button onClick={onClose}>{KIT_WORDS.cancel}</Button>
      <Button type="submit" form={form} look="main" disabled={send.isPending}>
        {ARCHIVE_WORDS.submit}
      </Button>
    </>
  );
  return (
    <Dialog title={ARCHIVE_WORDS.inTitle} onClose={onClose} answers={answers}>
      <p>{ARCHIVE_WORDS.inAbout}</p>
      <form
        id={form}
        onSubmit={(event) => {
          event.preventDefault();
          setMissing(file === undefined);
          if (file !== undefined && !send.isPending) send.mutate(file);
        }}
      >
        <ChooseFile
          error={missing ? ARCHIVE_WORDS.none : undefined}
          onFile={(chosen) => {
            setFile(chosen);
            setMissing(false);
            send.reset();
          }}
        />
      </form>
      {/* Always there, so that what is said in it is read out. */}
      <p role="status">{send.isPending ? saidOf(part) : ''}</p>
      {answer && 'refused' in answer && !send.isPending ? <Message severity="blocker" said={answer.refused} /> : null}
    </Dialog>
  );
}

const saidOf = (part: number): string =>
  part < 1 ? ARCHIVE_WORDS.sending(Math.floor(part * 100)) : ARCHIVE_WORDS.reading;

interface ChooseFileProps {
  readonly error: string | undefined;
  readonly onFile: (file: File | undefined) => void;
}

function ChooseFile({ error, onFile }: ChooseFileProps) {
  const id = useId();
  return (
    <FieldFrame id={id} label={ARCHIVE_WORDS.choose} error={error}>
      <input
        id={id}
        type="file"
        accept=".zip,application/zip"
        className={`${CONTROL_CLASSES} py-1 touch:py-2.5`}
        aria-invalid={error === undefined ? undefined : true}
        aria-describedby={describedBy({ id, error })}
        onChange={(event) => onFile(event.currentTarget.files?.[0])}
      />
    </FieldFrame>
  );
}

function Taken({ taken, onClose }: { readonly taken: ArchiveTaken; readonly onClose: () => void }) {
  const { crewId, crewName, rigs, types } = taken;
  return (
    <Dialog
      title={ARCHIVE_WORDS.inTitle}
      onClose={onClose}
      answers={<Button onClick={onClose}>{KIT_WORDS.close}</Button>}
    >
      <p role="status">{ARCHIVE_WORDS.taken(crewName, counted(rigs, 'rig'), counted(types, 'fixture type'))}</p>
      <p>
        <TextLink href={`/crews/${crewId}`}>{ARCHIVE_WORDS.open}</TextLink>
      </p>
    </Dialog>
  );
}
