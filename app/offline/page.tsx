import { Notice } from '#ui/panels/notice.tsx';
import { OFFLINE } from '#words/screens.ts';

export default function Page() {
  return <Notice severity="caution" said={OFFLINE} />;
}
