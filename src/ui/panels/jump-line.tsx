import { LINK_CLASSES } from '../kit/text-link.tsx';

export interface JumpLineProps {
  /** What a screen reader calls the line. */
  readonly name: string;
  /** The parts of the page by the anchor of each, in order. */
  readonly parts: Readonly<Record<string, string>>;
}

/** A line of words that lead to the parts of a long page. */
export function JumpLine({ name, parts }: JumpLineProps) {
  return (
    <nav aria-label={name}>
      <ul className="flex flex-wrap gap-x-4">
        {Object.entries(parts).map(([anchor, title]) => (
          <li key={anchor}>
            <a className={LINK_CLASSES} href={`#${anchor}`}>
              {title}
            </a>
          </li>
        ))}
      </ul>
    </nav>
  );
}
