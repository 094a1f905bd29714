import { CrewPage } from '#ui/panels/crew/crew-page.tsx';

export default function Page() {
  return <CrewPage />;
}
