import { useState, useSyncExternalStore } from 'react';
import type { Provenance } from '#wire/record.ts';
import type { RigSummary } from '#wire/rigs.ts';
import { aboutRecord, RESTORE_WORDS as words } from '#words/restore.ts';
import { KIT_WORDS } from '#words/screens.ts';
import { EMPTY_WORDS } from '#words/sheet.ts';
import { Message } from '../../kit/message.tsx';
import { Select } from '../../kit/select.tsx';
import { useKeptRig } from '../../live/kept/use-kept-rig.ts';
import type { RigStore } from '../../live/rig-store.ts';
import { Restore } from './restore.tsx';
import { type RestoreRecord, useRestoreRecords } from './use-restore-records.ts';

export interface RestoreFromProps {
  readonly store: RigStore;
  readonly rig: RigSummary;
  readonly from: Provenance;
}

/** Which record one puts back to, in words, and the sheet of it once that record is here. */
export function RestoreFrom({ store, rig, from }: RestoreFromProps) {
  const records = useRestoreRecords(rig, from);
  const [wanted, setWanted] = useState('');
  if (records === undefined) return <p className="text-soft">{KIT_WORDS.loading}</p>;
  const record = records.find(({ at }) => at.hash === wanted) ?? records[0];
  const about = record.at.hash === from.hash ? aboutRecord(from) : '';
  return (
    <div className="flex flex-col gap-3">
      {records.length === 1 ? (
        <p className="print:hidden">
          {words.record} {record.words}.
        </p>
      ) : (
        <div className="max-w-xl print:hidden">
          <Select
            label={words.record}
            choices={records.map(({ at, words: label }) => ({ value: at.hash, label }))}
            value={record.at.hash}
            onChoose={setWanted}
          />
        </div>
      )}
      {about === '' ? null : <p className="max-w-prose">{about}</p>}
      <Opened key={record.at.hash} store={store} rig={rig} record={record} />
    </div>
  );
}

interface OpenedProps extends Omit<RestoreFromProps, 'from'> {
  readonly record: RestoreRecord;
}

function Opened({ store, rig, record }: OpenedProps) {
  const arrived = useSyncExternalStore(store.subscribeLink, store.hasArrived);
  const frozen = useKeptRig(record.at);
  return (
    <>
      {frozen.trouble === undefined ? null : <Message severity="blocker" said={{ what: words[frozen.trouble] }} />}
      {frozen.rig === undefined || !arrived ? (
        <p className="text-soft">
          {frozen.trouble !== undefined ? '' : arrived ? KIT_WORDS.loading : EMPTY_WORDS.arriving}
        </p>
      ) : (
        <Restore store={store} summary={rig} record={record} house={frozen.rig} />
      )}
    </>
  );
}
