import { Mark } from '../kit/mark.tsx';

/** Why something was not done, said at once; nothing while it was. */
export function RefusedLine({ why }: { readonly why: string | undefined }) {
  if (why === undefined) return null;
  return (
    <p role="alert">
      <Mark severity="blocker" className="mr-1" />
      {why}
    </p>
  );
}
