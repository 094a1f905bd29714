'use client';

import { useEffect } from 'react';

/**
 * Lets this device keep the pages, where the browser grants that: over HTTPS and on the machine itself, not over plain
 * HTTP from another one. In development the pages change too often to be kept.
 */
export function RegisterServiceWorker() {
  useEffect(() => {
    if (process.env.NODE_ENV !== 'production' || !('serviceWorker' in navigator)) return;
    // Without it everything works as long as there is a network, so a refusal here is not worth a sentence on screen.
    const attempt = (left: number) => {
      const again = () => {
        if (left > 0) later = setTimeout(() => attempt(left - 1), RETRY_MS);
      };
      navigator.serviceWorker.register('/sw.js', { updateViaCache: 'none' }).then(
        ({ installing }) =>
          installing?.addEventListener('statechange', () => {
            if (installing.state === 'redundant') again();
          }),
        again,
      );
    };
    let later: ReturnType<typeof setTimeout> | undefined;
    attempt(RETRIES);
    return () => clearTimeout(later);
  }, []);
  return null;
}

// One file that does not arrive undoes the whole installation, and a venue's network loses files.
const RETRIES = 5;
const RETRY_MS = 10_000;
