import { RigPage } from '#ui/panels/rig/rig-page.tsx';

export default function Page() {
  return <RigPage page="lists-in" />;
}
