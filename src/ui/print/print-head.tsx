/** What a printed page is: on paper only, since the screen has a banner. */
export function PrintHead({ lines }: { readonly lines: readonly string[] }) {
  const [title, ...rest] = lines;
  return (
    <div className="hidden pb-3 print:block">
      <p className="font-serif text-title font-semibold">{title}</p>
      {rest.map((line) => (
        <p key={line}>{line}</p>
      ))}
    </div>
  );
}
