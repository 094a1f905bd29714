'use client';

import { MutationCache, QueryClient, QueryClientProvider } from '@tanstack/react-query';
import { createTRPCClient, httpBatchLink } from '@trpc/client';
import { createTRPCContext } from '@trpc/tanstack-react-query';
import { type ReactNode, useState } from 'react';
import type { AppRouter } from '#server/api/router.ts';
import { CAPS } from '#wire/caps.ts';
import { isUnreachable } from './unreachable.ts';

const context = createTRPCContext<AppRouter>();

/** The server's procedures as query and mutation options. */
export const useTRPC = context.useTRPC;

/** Gives every page below it the server's procedures. */
export function ServerProvider({ children }: { readonly children: ReactNode }) {
  const [client] = useState(makeQueryClient);
  const [trpc] = useState(() =>
    createTRPCClient<AppRouter>({ links: [httpBatchLink({ url: '/api/trpc', maxItems: CAPS.apiBatch })] }),
  );
  return (
    <QueryClientProvider client={client}>
      <context.TRPCProvider trpcClient={trpc} queryClient={client}>
        {children}
      </context.TRPCProvider>
    </QueryClientProvider>
  );
}

/**
 * Asks even when the device believes that it has no network: a laptop that serves itself has none. Any change made on
 * the server makes every answer old.
 */
function makeQueryClient(): QueryClient {
  const client: QueryClient = new QueryClient({
    mutationCache: new MutationCache({ onSuccess: () => client.invalidateQueries() }),
    defaultOptions: {
      queries: {
        networkMode: 'always',
        staleTime: 5_000,
        retry: (failures, error) => isUnreachable(error) && failures < 1,
      },
      mutations: { networkMode: 'always' },
    },
  });
  return client;
}
