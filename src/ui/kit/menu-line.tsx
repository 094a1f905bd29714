import { StayLink } from './stay-link.tsx';

interface MenuWord {
  readonly label: string;
  readonly href: string;
}

export interface MenuLineProps {
  /** What a screen reader calls the line. */
  readonly name: string;
  readonly words: readonly MenuWord[];
  /** The `href` of the page one is on. */
  readonly current?: string | undefined;
}

/** A menu as one line of words; the word of the page one is on is bold and underlined in ink. */
export function MenuLine({ name, words, current }: MenuLineProps) {
  return (
    <nav aria-label={name}>
      <ul className="flex flex-wrap gap-x-5 gap-y-1 text-large">
        {words.map(({ label, href }) => (
          <li key={href}>
            <StayLink
              href={href}
              aria-current={href === current ? 'page' : undefined}
              className="inline-flex min-h-control items-center border-b-2 border-transparent text-soft hover:text-ink aria-[current=page]:border-ink aria-[current=page]:font-semibold aria-[current=page]:text-ink"
            >
              {label}
            </StayLink>
          </li>
        ))}
      </ul>
    </nav>
  );
}
