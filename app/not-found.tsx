import { Notice } from '#ui/panels/notice.tsx';
import { NOT_FOUND } from '#words/screens.ts';

export default function NotFound() {
  return <Notice severity="caution" said={NOT_FOUND} />;
}
