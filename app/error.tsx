'use client';

import { Notice } from '#ui/panels/notice.tsx';
import { BROKEN } from '#words/screens.ts';

export default function BrokenPage() {
  return <Notice severity="blocker" said={BROKEN} />;
}
