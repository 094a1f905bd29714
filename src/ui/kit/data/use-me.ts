import { useQuery } from '@tanstack/react-query';
import { useEffect } from 'react';
import { z } from 'zod';
import type { Me } from '#wire/me.ts';
import { forgetKept } from './kept.ts';
import { useTRPC } from './trpc.tsx';
import { type Served, useServed } from './use-served.ts';

const KeptMe = z.object({
  user: z.object({ id: z.string(), name: z.string(), email: z.string() }).nullable(),
  demo: z.boolean(),
  secure: z.boolean(),
  store: z.enum(['embedded', 'postgres']),
});

const readMe = (value: unknown): Me | undefined => KeptMe.safeParse(value).data;

/** Who is signed in on this device; without a network, who was the last time. */
export function useMe(): Served<Me> {
  const trpc = useTRPC();
  const me = useServed(useQuery(trpc.me.get.queryOptions()), 'me', readMe);
  const signedOut = me.fresh && me.value?.user === null;
  useEffect(() => {
    if (signedOut) forgetKept();
  }, [signedOut]);
  return me;
}
