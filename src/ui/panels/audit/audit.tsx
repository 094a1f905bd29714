import { useInfiniteQuery, useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import type { AuditKind } from '#wire/audit.ts';
import { AUDIT_CHOICES, AUDIT_WORDS } from '#words/audit.ts';
import { KIT_WORDS } from '#words/screens.ts';
import { Button } from '../../kit/button.tsx';
import { useTRPC } from '../../kit/data/trpc.tsx';
import { saidOf } from '../../kit/data/unreachable.ts';
import { Message } from '../../kit/message.tsx';
import { Select } from '../../kit/select.tsx';
import { AuditLines } from './audit-lines.tsx';

const ANY = 'any';
/** Ids of people are prefixed, so that nobody's is the word for everybody. */
const of = (id: string): `of ${string}` => `of ${id}`;

/** The entries, the newest first, by kind and by person if one wants; older ones when asked for. */
export function Audit({ crewId }: { readonly crewId: string }) {
  const trpc = useTRPC();
  const [kind, setKind] = useState<AuditKind | typeof ANY>(ANY);
  const [by, setBy] = useState<string>(ANY);
  const people = useQuery(trpc.audit.people.queryOptions({ crewId })).data ?? [];
  const asked = useInfiniteQuery(
    trpc.audit.list.infiniteQueryOptions(
      { crewId, kind: kind === ANY ? null : kind, by: by === ANY ? null : by.slice('of '.length) },
      { initialCursor: null, getNextPageParam: ({ before }) => before },
    ),
  );
  const lines = asked.data?.pages.flatMap((page) => page.lines);
  return (
    <div className="flex flex-col gap-4">
      <p className="max-w-prose">{AUDIT_WORDS.about}</p>
      <div className="grid gap-4 sm:grid-cols-2">
        <Select
          label={AUDIT_WORDS.kind}
          choices={[{ value: ANY, label: AUDIT_WORDS.anyKind }, ...AUDIT_CHOICES]}
          value={kind}
          onChoose={setKind}
        />
        <Select
          label={AUDIT_WORDS.person}
          choices={[
            { value: ANY, label: AUDIT_WORDS.anybody },
            ...people.map(({ id, name }) => ({ value: of(id), label: name === '' ? AUDIT_WORDS.nobody : name })),
          ]}
          value={by}
          onChoose={setBy}
        />
      </div>
      {asked.error ? <Message severity="blocker" said={saidOf(asked.error)} /> : null}
      {lines === undefined && !asked.error ? <p className="text-soft">{KIT_WORDS.loading}</p> : null}
      {lines === undefined ? null : <AuditLines lines={lines} />}
      {asked.hasNextPage ? (
        <div>
          <Button disabled={asked.isFetchingNextPage} onClick={() => void asked.fetchNextPage()}>
            {AUDIT_WORDS.older}
          </Button>
        </div>
      ) : null}
      {lines !== undefined && lines.length > 0 && !asked.hasNextPage ? (
        <p className="text-soft">{AUDIT_WORDS.end}</p>
      ) : null}
    </div>
  );
}
