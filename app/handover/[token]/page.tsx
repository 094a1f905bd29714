import { ReceivePage } from '#ui/panels/handover/receive-page.tsx';

// Made for each request and not kept: the address carries a secret, and anybody could fill the disk with made-up ones.
export const dynamic = 'force-dynamic';

export default function Page() {
  return <ReceivePage />;
}
