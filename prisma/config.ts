import { defineConfig } from 'prisma/config';

/** Only for `npx prisma … --config prisma/config.ts`. The server applies the same migrations by itself at its start. */
export default defineConfig({
  schema: 'schema.prisma',
  migrations: { path: 'migrations' },
  datasource: { url: process.env.DATABASE_URL ?? 'postgresql://localhost:5432/rigledger' },
});
