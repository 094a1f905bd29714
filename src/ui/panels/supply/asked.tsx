import { useState } from 'react';
import { removeNamed, renameNamed } from '#engine/supply/feed-plans.ts';
import { SUPPLY_WORDS as words } from '#words/supply.ts';
import { AskNameDialog } from '../ask-name-dialog.tsx';
import { ConfirmDialog } from '../confirm-dialog.tsx';
import { BalanceDialog } from './balance-dialog.tsx';
import { carryOut, type Question, type Scene } from './scene.ts';

export interface AskedProps {
  readonly scene: Scene;
  readonly question: Question;
  readonly onClose: () => void;
}

/** What is asked before it is done: another name, an end, a balance. */
export function Asked({ scene, question, onClose }: AskedProps) {
  const [refused, setRefused] = useState<string>();
  const said = refused === undefined ? undefined : { what: refused };
  const end = (why: string | undefined) => (why === undefined ? onClose() : setRefused(why));
  switch (question.kind) {
    case 'rename':
      return (
        <AskNameDialog
          title={words.renameTitle(question.name)}
          label={words.nameOf[question.card]}
          hint={words.renameHint[question.card]}
          initial={question.name}
          submit={words.renameWord}
          busy={false}
          refused={said}
          onName={(name) => end(carryOut(scene, renameNamed(scene.store.rig(), question.card, question.key, name)))}
          onClose={onClose}
        />
      );
    case 'remove':
      return (
        <ConfirmDialog
          title={words.removeTitle(question.name)}
          about={words.removeAbout[question.card]}
          submit={words.removeWord}
          busy={false}
          refused={said}
          onConfirm={() => end(carryOut(scene, removeNamed(scene.store.rig(), question.card, question.key)))}
          onClose={onClose}
        />
      );
    case 'balance':
      return <BalanceDialog scene={scene} supply={question.supply} onClose={onClose} />;
  }
}
