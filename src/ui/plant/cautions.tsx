import { Mark } from '../kit/mark.tsx';

/** What to mind, one line each. */
export function Cautions({ texts }: { readonly texts: readonly string[] }) {
  return texts.map((text) => (
    <p key={text} className="max-w-5xl">
      <Mark severity="caution" className="mr-1" />
      {text}
    </p>
  ));
}
