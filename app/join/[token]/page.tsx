import { JoinPage } from '#ui/panels/join/join-page.tsx';

export default function Page() {
  return <JoinPage />;
}
