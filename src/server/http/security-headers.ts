import type { Scheme } from '../auth/create-auth.ts';

/** Headers of every answer: no sniffing, no framing, no address given away, nothing of the machine that a page does not need. */
export function securityHeaders(scheme: Scheme): Readonly<Record<string, string>> {
  return {
    'x-content-type-options': 'nosniff',
    'x-frame-options': 'DENY',
    'referrer-policy': 'same-origin',
    'cross-origin-resource-policy': 'same-origin',
    'permissions-policy': 'camera=(), geolocation=(), microphone=(), payment=(), usb=()',
    // Over plain HTTP a browser ignores it, and complains.
    ...(scheme === 'https' ? { 'cross-origin-opener-policy': 'same-origin' } : {}),
  };
}

/** What a page may load and run: only what this server sent, and of inline scripts only those named by their SHA-256. */
export function pagePolicy(scriptHashes: readonly string[], host: string): string {
  const scripts = ["'self'", ...scriptHashes.map((hash) => `'sha256-${hash}'`)].join(' ');
  // Older browsers do not take 'self' for the sockets of the same host.
  const sockets = /^[a-z0-9.:[\]_-]+$/.test(host) ? `ws://${host} wss://${host}` : '';
  return [
    "default-src 'self'",
    `script-src ${scripts}`,
    "style-src 'self' 'unsafe-inline'",
    "img-src 'self' data: blob:",
    "font-src 'self' data:",
    `connect-src 'self' ${sockets}`.trim(),
    "worker-src 'self' blob:",
    "object-src 'none'",
    "base-uri 'none'",
    "form-action 'self'",
    "frame-ancestors 'none'",
  ].join('; ');
}

/** What an answer that is no page may do: nothing. */
export const DATA_POLICY = "default-src 'none'; frame-ancestors 'none'";
