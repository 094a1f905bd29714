import { useState } from 'react';
import { FRONT_WORDS } from '#words/front.ts';
import { Button } from '../../kit/button.tsx';
import { Message, type Said } from '../../kit/message.tsx';
import { TextLink } from '../../kit/text-link.tsx';
import { enterDemo } from '../account/account-requests.ts';

/** What this is for, and the ways in. */
export function Welcome({ demo }: { readonly demo: boolean }) {
  return (
    <>
      <p className="max-w-prose font-serif text-name">{FRONT_WORDS.job}</p>
      <p className="flex flex-wrap gap-x-5 gap-y-1 text-large">
        <TextLink href="/sign-in">{FRONT_WORDS.signIn}</TextLink>
        <TextLink href="/sign-up">{FRONT_WORDS.signUp}</TextLink>
      </p>
      {demo ? <DemoDoors /> : null}
    </>
  );
}

const DOORS = ['designer', 'technician'] as const;

function DemoDoors() {
  const [entering, setEntering] = useState<(typeof DOORS)[number]>();
  const [said, setSaid] = useState<Said>();
  const enter = async (as: (typeof DOORS)[number]) => {
    setEntering(as);
    setSaid(undefined);
    const refused = await enterDemo(as);
    if (refused === undefined) return window.location.assign('/');
    setEntering(undefined);
    setSaid(refused);
  };
  return (
    <section aria-labelledby="demo" className="flex max-w-prose flex-col gap-3 border-t border-rule-strong pt-5">
      <h2 id="demo" className="text-name">
        {FRONT_WORDS.demoTitle}
      </h2>
      <p>{FRONT_WORDS.demo}</p>
      <div className="flex flex-wrap gap-3">
        {DOORS.map((as) => (
          <Button key={as} onClick={() => enter(as)} disabled={entering !== undefined}>
            {entering === as ? FRONT_WORDS.entering : FRONT_WORDS.doors[as]}
          </Button>
        ))}
      </div>
      {said === undefined ? null : <Message severity="blocker" said={said} />}
    </section>
  );
}
