import { foldName } from '#engine/model/ids.ts';
import type { Mode } from '#engine/model/rig.ts';
import type { Pin } from '#engine/type/pin.ts';
import { TAKEN_WORDS } from '#words/rig-types.ts';
import { LinkButton } from '../../../kit/link-button.tsx';
import { TextLink } from '../../../kit/text-link.tsx';
import type { RigStore } from '../../../live/rig-store.ts';
import { typePath } from '../../../panels/library/library-address.ts';

export interface TakenFromProps {
  readonly store: RigStore;
  /** The modes of one type of the rig. */
  readonly modes: readonly Mode[];
  readonly crewId: string | undefined;
  readonly onFind: () => void;
  readonly onTake: (typeId: string) => void;
}

/** Of which revision of the library a type is a copy, whether there is another by now, and the way to it. */
export function TakenFrom({ store, modes, crewId, onFind, onTake }: TakenFromProps) {
  const writable = store.canEdit() && crewId !== undefined;
  const pins = modes.flatMap(({ pin }) => pin ?? []);
  const newest = newestPin(pins);
  const without = modes.length - pins.length;
  if (newest === undefined) {
    return (
      <p className="flex flex-wrap gap-x-3 pl-5 text-soft">
        <span>{TAKEN_WORDS.notTaken}</span>
        {writable ? <LinkButton onClick={onFind}>{TAKEN_WORDS.find}</LinkButton> : null}
      </p>
    );
  }
  const { typeId, number, type } = newest;
  const news = store
    .findings()
    .find((finding) => finding.rule === 'library-differs' && foldName(finding.type) === foldName(modes[0]?.type ?? ''));
  const take = () => onTake(typeId);
  return (
    <div className="flex flex-wrap gap-x-3 pl-5 text-soft">
      <span>{TAKEN_WORDS.from(`${type.maker} ${type.model}`.trim(), number)}</span>
      {crewId === undefined ? null : <TextLink href={typePath(crewId, typeId)}>{TAKEN_WORDS.inLibrary}</TextLink>}
      {writable && without > 0 ? (
        <span>
          {TAKEN_WORDS.partly(without)} <LinkButton onClick={take}>{TAKEN_WORDS.again}</LinkButton>
        </span>
      ) : null}
      {news?.rule === 'library-differs' ? (
        <span className="w-full text-ink">
          {TAKEN_WORDS.newer(news.newest)}{' '}
          {writable ? <LinkButton onClick={take}>{TAKEN_WORDS.look}</LinkButton> : null}
        </span>
      ) : null}
    </div>
  );
}

const newestPin = (pins: readonly Pin[]): Pin | undefined =>
  pins.reduce<Pin | undefined>((best, pin) => (best === undefined || pin.number > best.number ? pin : best), undefined);
