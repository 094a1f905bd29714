import { SUPPLY_WORDS as words } from '#words/supply.ts';
import { LinkButton } from '../../kit/link-button.tsx';
import type { Scene } from './scene.ts';

export interface CardActsProps {
  readonly scene: Scene;
  readonly card: 'supply' | 'circuit' | 'limit';
  readonly of: string;
  readonly name: string;
}

/** The way to another name of a card, and to its end. */
export function CardActs({ scene, card, of, name }: CardActsProps) {
  if (scene.writable === 'no') return null;
  return (
    <>
      {card === 'limit' ? null : (
        <LinkButton
          aria-label={words.renameName(name)}
          onClick={() => scene.onAsk({ kind: 'rename', card, key: of, name })}
        >
          {words.rename}
        </LinkButton>
      )}
      <LinkButton
        aria-label={words.removeName(name)}
        onClick={() => scene.onAsk({ kind: 'remove', card, key: of, name })}
      >
        {words.remove}
      </LinkButton>
    </>
  );
}
