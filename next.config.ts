import type { NextConfig } from 'next';

const config: NextConfig = {
  reactStrictMode: true,
  poweredByHeader: false,
  devIndicators: false,
  // Types are a check of their own, over more files than the build sees.
  typescript: { ignoreBuildErrors: true },
  // These load native or WebAssembly parts from beside their own files, or must exist once in the process.
  serverExternalPackages: [
    '@electric-sql/pglite',
    'pglite-prisma-adapter',
    'pg',
    '@prisma/client',
    '@prisma/adapter-pg',
    'better-auth',
  ],
  headers: async () => [
    { source: '/sw.js', headers: [{ key: 'cache-control', value: 'no-cache' }] },
    { source: '/theme.js', headers: [{ key: 'cache-control', value: 'no-cache' }] },
  ],
};

export default config;
