import type { AuditLine } from '#wire/audit.ts';
import { AUDIT_WORDS, auditSentence } from '#words/audit.ts';
import { sayDay, sayTime } from '#words/screens.ts';

/** Entries as lines of words: when, who, and what was done, each day under its own heading. */
export function AuditLines({ lines }: { readonly lines: readonly AuditLine[] }) {
  if (lines.length === 0) return <p className="text-soft">{AUDIT_WORDS.none}</p>;
  return daysOf(lines).map(({ day, lines: ofDay }) => (
    <section key={`${day} ${ofDay[0]?.id}`} aria-label={day}>
      <h2 className="border-b border-ink pb-1 text-name">{day}</h2>
      <ol>
        {ofDay.map(({ id, at, by, kind, what }) => (
          <li key={id} className="flex flex-wrap gap-x-4 border-b border-rule px-2 py-1">
            <time dateTime={at} className="text-soft tabular-nums">
              {sayTime(at)}
            </time>
            <span className="min-w-0 flex-1 basis-60 [overflow-wrap:anywhere]">
              <span className="font-medium">{by === '' ? AUDIT_WORDS.nobody : by}: </span>
              {auditSentence(kind, what)}
            </span>
          </li>
        ))}
      </ol>
    </section>
  ));
}

interface Day {
  readonly day: string;
  readonly lines: AuditLine[];
}

/** Neighbours of one day together; an archive may bring in days that were before. */
function daysOf(lines: readonly AuditLine[]): readonly Day[] {
  const days: Day[] = [];
  for (const line of lines) {
    const day = sayDay(line.at);
    const last = days.at(-1);
    if (last?.day === day) last.lines.push(line);
    else days.push({ day, lines: [line] });
  }
  return days;
}
