import { RigPages } from '#ui/panels/rig/rig-pages.tsx';

// Made for each request and not kept: the address carries an id, and anybody could fill the disk with made-up ones.
export const dynamic = 'force-dynamic';

/** Every page of a rig is one page to the server: moving between them asks nothing of the network and keeps the rig open. */
export default function Page() {
  return <RigPages />;
}
