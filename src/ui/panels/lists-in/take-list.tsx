import { type ChangeEvent, type DragEvent, useId, useState } from 'react';
import type { Result } from '#base/result.ts';
import { LISTS_IN_WORDS, sayListRefusal } from '#words/lists-in.ts';
import { Button } from '../../kit/button.tsx';
import { CONTROL_CLASSES } from '../../kit/field-frame.tsx';
import { Message, type Said } from '../../kit/message.tsx';
import { type ListRefusal, type OpenedList, openBytes, openPasted } from './opened-list.ts';

export interface TakeListProps {
  readonly onOpened: (list: OpenedList) => void;
}

/** Takes a list: a chosen file, a dropped one, or pasted text. */
export function TakeList({ onOpened }: TakeListProps) {
  const [said, setSaid] = useState<Said>();
  const [text, setText] = useState('');
  const id = useId();
  const settle = (opened: Result<OpenedList, ListRefusal>) => {
    if (opened.ok) return onOpened(opened.value);
    setSaid(sayListRefusal(opened.error));
  };
  const takeFile = async (file: File | undefined) => {
    if (file === undefined) return;
    try {
      settle(openBytes(file.name, new Uint8Array(await file.arrayBuffer())));
    } catch (error) {
      // The file went away, or is a folder: the browser cannot read it.
      if (!(error instanceof DOMException)) throw error;
      setSaid(LISTS_IN_WORDS.unreadableFile);
    }
  };
  const takeDrop = (event: DragEvent) => {
    event.preventDefault();
    const [file] = event.dataTransfer.files;
    if (file) void takeFile(file);
    else settle(openPasted(LISTS_IN_WORDS.pasted, event.dataTransfer.getData('text/plain')));
  };
  const takeChosen = (event: ChangeEvent<HTMLInputElement>) => {
    const input = event.currentTarget;
    void takeFile(input.files?.[0]).finally(() => {
      input.value = ''; // so that the same file, corrected, can be chosen again
    });
  };
  return (
    <div className="flex max-w-prose flex-col gap-5">
      <p>{LISTS_IN_WORDS.about}</p>
      <section
        aria-label={LISTS_IN_WORDS.choose}
        onDragOver={(event) => event.preventDefault()}
        onDrop={takeDrop}
        className="flex flex-wrap items-center gap-3 border border-edge border-dashed bg-sheet p-4"
      >
        <label
          htmlFor={`${id}-file`}
          className="inline-flex min-h-control cursor-pointer items-center rounded-control border border-ink bg-ink px-3 font-medium text-sheet has-focus-visible:outline-2 has-focus-visible:outline-offset-2 has-focus-visible:outline-ink"
        >
          {LISTS_IN_WORDS.choose}
          <input
            id={`${id}-file`}
            type="file"
            accept=".csv,.tsv,.txt,text/csv,text/tab-separated-values,text/plain"
            className="sr-only"
            onChange={takeChosen}
          />
        </label>
        <span className="text-soft">{LISTS_IN_WORDS.drop}</span>
      </section>
      <div className="flex flex-col gap-1">
        <label htmlFor={`${id}-text`} className="font-medium">
          {LISTS_IN_WORDS.paste}
        </label>
        <textarea
          id={`${id}-text`}
          className={`${CONTROL_CLASSES} h-40 py-1 font-mono`}
          spellCheck={false}
          aria-describedby={`${id}-hint`}
          value={text}
          onChange={(event) => setText(event.currentTarget.value)}
        />
        <p id={`${id}-hint`} className="text-small text-soft">
          {LISTS_IN_WORDS.pasteHint}
        </p>
        <div>
          <Button onClick={() => settle(openPasted(LISTS_IN_WORDS.pasted, text))}>{LISTS_IN_WORDS.readPasted}</Button>
        </div>
      </div>
      {said === undefined ? null : <Message severity="blocker" said={said} />}
    </div>
  );
}
