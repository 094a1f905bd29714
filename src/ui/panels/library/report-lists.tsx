import type { ReactNode } from 'react';
import type { Severity } from '#engine/model/finding.ts';
import type { GdtfReport } from '#engine/type/gdtf-report.ts';
import { typeTroubleSentence } from '#words/fixture-types.ts';
import { defectSentence, guessSentence } from '#words/gdtf.ts';
import { leftText, readSentence, UPLOAD_WORDS } from '#words/library.ts';
import { Mark } from '../../kit/mark.tsx';

/** What of a file was read, what was wrong with it, what was guessed, and what was left. */
export function ReportLists({ report }: { readonly report: GdtfReport }) {
  const { defects, moreDefects, guesses, left, troubles } = report;
  const more = moreDefects === 0 ? [] : [UPLOAD_WORDS.more(moreDefects)];
  return (
    <div className="flex max-w-prose flex-col gap-1 [overflow-wrap:anywhere]">
      <p className="text-soft">{readSentence(report)}</p>
      <Lines severity="caution" title={UPLOAD_WORDS.troubles} lines={troubles.map(typeTroubleSentence)} />
      <Lines severity="caution" title={UPLOAD_WORDS.wrong} lines={[...defects.map(defectSentence), ...more]} />
      <Lines severity="note" title={UPLOAD_WORDS.guessed} lines={guesses.map(guessSentence)} />
      {left.length === 0 ? null : (
        <Titled severity="note" title={UPLOAD_WORDS.left}>
          {leftText(left)}.
        </Titled>
      )}
    </div>
  );
}

interface LinesProps {
  readonly severity: Severity;
  readonly title: string;
  readonly lines: readonly string[];
}

function Lines({ severity, title, lines }: LinesProps) {
  if (lines.length === 0) return null;
  return (
    <Titled severity={severity} title={title}>
      <ul className="list-disc pl-5">
        {[...new Set(lines)].map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </Titled>
  );
}

function Titled(props: { readonly severity: Severity; readonly title: string; readonly children: ReactNode }) {
  return (
    <div>
      <p>
        <Mark severity={props.severity} /> <span className="font-medium">{props.title}</span>
      </p>
      <div className="pl-5">{props.children}</div>
    </div>
  );
}
