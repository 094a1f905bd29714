import { useQueryClient } from '@tanstack/react-query';
import { useRef, useState } from 'react';
import { type FileAnswer, sendFile } from './send-file.ts';

/** A file on its way into the library. */
export interface QueuedFile {
  readonly key: number;
  readonly name: string;
  readonly state: 'waiting' | 'sending' | FileAnswer;
}

export interface FileQueue {
  readonly files: readonly QueuedFile[];
  readonly add: (files: readonly File[]) => void;
  /** Forgets those that are done. */
  readonly clear: () => void;
}

/** Sends files one after the other, also those that come while others are on their way. */
export function useFileQueue(crewId: string): FileQueue {
  const queries = useQueryClient();
  const [files, setFiles] = useState<readonly QueuedFile[]>([]);
  const last = useRef(Promise.resolve());
  const keys = useRef(0);
  const settle = (key: number, state: QueuedFile['state']) =>
    setFiles((all) => all.map((each) => (each.key === key ? { ...each, state } : each)));
  const send = async (key: number, file: File) => {
    settle(key, 'sending');
    settle(key, await sendFile(crewId, file));
    // Not waited for: the next file need not wait until the list is up to date.
    void queries.invalidateQueries();
  };
  const add = (chosen: readonly File[]) => {
    const queued = chosen.map((file) => ({ key: keys.current++, file }));
    setFiles((all) => [
      ...all,
      ...queued.map(({ key, file }): QueuedFile => ({ key, name: file.name, state: 'waiting' })),
    ]);
    for (const { key, file } of queued) last.current = last.current.then(() => send(key, file));
  };
  return { files, add, clear: () => setFiles((all) => all.filter((each) => typeof each.state === 'string')) };
}
