import { PLAIN_HTTP } from '#words/screens.ts';
import { useMe } from '../kit/data/use-me.ts';
import { Message } from '../kit/message.tsx';

/** Says what plain HTTP lacks, unless the page comes from this very machine. */
export function PlainHttpNotice() {
  const me = useMe();
  if (!me.fresh || me.value?.secure !== false || isThisMachine(window.location.hostname)) return null;
  return <Message severity="caution" said={PLAIN_HTTP} />;
}

function isThisMachine(host: string): boolean {
  return host === 'localhost' || host.endsWith('.localhost') || host === '[::1]' || /^127(\.\d+){3}$/.test(host);
}
