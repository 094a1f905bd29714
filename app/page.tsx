import { PageFrame } from '#ui/kit/page-frame.tsx';

export default function FrontPage() {
  return (
    <PageFrame title="Rigledger" banner={<p className="font-serif text-title">Rigledger</p>}>
      <p>…</p>
    </PageFrame>
  );
}
