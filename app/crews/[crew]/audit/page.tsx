import { AuditPage } from '#ui/panels/audit/audit-page.tsx';

// Made for each request and not kept: the address carries an id, and anybody could fill the disk with made-up ones.
export const dynamic = 'force-dynamic';

export default function Page() {
  return <AuditPage />;
}
