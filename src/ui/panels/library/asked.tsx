import type { ReactNode } from 'react';
import { KIT_WORDS } from '#words/screens.ts';
import { saidOf } from '../../kit/data/unreachable.ts';
import { Message } from '../../kit/message.tsx';
import type { Answer } from './use-library.ts';

export interface AskedProps<T> {
  readonly answer: Answer<T>;
  readonly children: (value: T) => ReactNode;
}

/** What the server answered, once it has; why it refused; and that it is being asked. */
export function Asked<T>({ answer, children }: AskedProps<T>) {
  if (answer.value !== undefined) return children(answer.value);
  if (answer.error !== null) return <Message severity="blocker" said={saidOf(answer.error)} />;
  return <p className="py-2 text-soft">{KIT_WORDS.loading}</p>;
}
