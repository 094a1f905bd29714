import type { RestoreLine } from '#engine/diff/restore.ts';
import { LINE_STATE_WORDS, lineSentence, tickWords, wholeSentence, RESTORE_WORDS as words } from '#words/restore.ts';
import { Button } from '../../kit/button.tsx';
import type { Tick } from './use-ticking.ts';

export interface LineRowProps {
  readonly line: RestoreLine;
  /** Whether its sentence names its unit: where no heading does. */
  readonly names: 'unit' | 'nothing';
  readonly writable: boolean;
  readonly onTick: Tick;
}

const SIGNS = { open: '☐', done: '☑', stays: '–' } as const;

/** One thing to put back, with who ticked it and when, and two large answers for one thumb. */
export function LineRow({ line, names, writable, onTick }: LineRowProps) {
  const { state, tick } = line;
  const said = names === 'unit' ? wholeSentence(line) : lineSentence(line);
  return (
    <li className="flex break-inside-avoid flex-wrap items-center gap-x-4 gap-y-1 py-1">
      <span className="min-w-0 flex-1 basis-72 text-large [overflow-wrap:anywhere]">
        <span aria-hidden="true" className="hidden print:inline">
          {SIGNS[state]}{' '}
        </span>
        <span className={state === 'open' ? '' : 'text-soft'}>{said}</span>
        {tick === undefined ? null : (
          <span className="block text-body text-soft">
            {LINE_STATE_WORDS[state]} · {tickWords(tick)}
          </span>
        )}
      </span>
      <span className="flex gap-2 max-sm:w-full print:hidden">
        {(['done', 'stays'] as const).map((answer) => (
          <Button
            key={answer}
            data-tick={answer}
            aria-pressed={state === answer}
            aria-label={`${words[answer]}: ${wholeSentence(line)}`}
            disabled={!writable}
            look={state === answer ? 'main' : 'plain'}
            className="min-w-24 text-large max-sm:flex-1"
            onClick={() => onTick(line, answer)}
          >
            <span aria-hidden="true">{state === answer ? SIGNS[answer] : ''}</span>
            {words[answer]}
          </Button>
        ))}
      </span>
    </li>
  );
}
