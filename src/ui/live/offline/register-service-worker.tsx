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
    navigator.serviceWorker.register('/sw.js', { updateViaCache: 'none' }).catch(() => undefined);
  }, []);
  return null;
}
