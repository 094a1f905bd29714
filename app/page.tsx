import { FrontPage } from '#ui/panels/front/front-page.tsx';

export default function Page() {
  return <FrontPage />;
}
