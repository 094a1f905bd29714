import './globals.css';
import type { Metadata, Viewport } from 'next';
import type { ReactNode } from 'react';
import { ServerProvider } from '#ui/kit/data/trpc.tsx';
import { RegisterServiceWorker } from '#ui/live/offline/register-service-worker.tsx';

export const metadata: Metadata = {
  description: 'The shared, live, checked patch sheet of a lighting rig.',
  manifest: '/manifest.webmanifest',
  icons: { icon: '/icon.svg', apple: '/icon.svg' },
};

export const viewport: Viewport = {
  width: 'device-width',
  initialScale: 1,
  themeColor: [
    { media: '(prefers-color-scheme: light)', color: '#f7f4ec' },
    { media: '(prefers-color-scheme: dark)', color: '#100d0a' },
  ],
};

/** Every page. theme.js may set the theme on the root before React sees it, hence `suppressHydrationWarning`. */
export default function Layout({ children }: { readonly children: ReactNode }) {
  return (
    <html lang="en-GB" suppressHydrationWarning>
      <head>
        <script src="/theme.js" />
      </head>
      <body>
        <ServerProvider>{children}</ServerProvider>
        <RegisterServiceWorker />
      </body>
    </html>
  );
}
