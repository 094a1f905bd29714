import type { DraftMode, ModeField } from '#engine/draft/draft.ts';
import { stopsPublishing } from '#engine/draft/draft-trouble.ts';
import { addMode, copyMode, removeMode } from '#engine/draft/mode-plans.ts';
import { DRAFT_SCREEN_WORDS } from '#words/draft-screen.ts';
import { draftTroubleSentence } from '#words/drafts.ts';
import { LinkButton } from '../../kit/link-button.tsx';
import { Mark } from '../../kit/mark.tsx';
import { ConfirmDialog } from '../../panels/confirm-dialog.tsx';
import { carryOut } from '../chart/chart-actions.ts';
import type { Desk } from '../desk.ts';
import { DraftField } from '../draft-field.tsx';
import { useDesk, useReading, useWritable } from '../use-desk.ts';

/** The modes as one line of words, and what is said of the one before one. */
export function ModesPart({ desk }: { readonly desk: Desk }) {
  const { draft } = useReading(desk.store);
  const chosen = useDesk(desk, (state) => state.mode);
  const writable = useWritable(desk.store);
  const mode = draft.modes.find((each) => each.id === chosen);
  return (
    <section aria-label={DRAFT_SCREEN_WORDS.modes} className="flex flex-col gap-2">
      <div className="flex flex-wrap items-baseline gap-x-5 gap-y-1 border-b border-ink">
        <h2 className="text-name">{DRAFT_SCREEN_WORDS.modes}</h2>
        <ul className="flex flex-wrap gap-x-5 text-large">
          {draft.modes.map((each) => (
            <li key={each.id}>
              <button
                type="button"
                aria-current={each.id === chosen ? 'true' : undefined}
                className="inline-flex min-h-control items-center border-b-2 border-transparent text-soft hover:text-ink aria-[current=true]:border-ink aria-[current=true]:font-semibold aria-[current=true]:text-ink"
                onClick={() => desk.chooseMode(each.id)}
              >
                {each.name || DRAFT_SCREEN_WORDS.unnamedMode}
              </button>
            </li>
          ))}
        </ul>
        {writable ? <ModeWords desk={desk} mode={mode} /> : null}
      </div>
      {mode === undefined ? (
        <p className="text-soft">{DRAFT_SCREEN_WORDS.noMode}</p>
      ) : (
        <ModeFacts key={mode.id} desk={desk} mode={mode} />
      )}
      <RemoveMode desk={desk} mode={mode} />
    </section>
  );
}

interface ModeProps {
  readonly desk: Desk;
  readonly mode: DraftMode;
}

function ModeWords({ desk, mode }: { readonly desk: Desk; readonly mode: DraftMode | undefined }) {
  const made = (edits: ReturnType<typeof addMode>) => {
    const [first] = edits;
    if (carryOut(desk, edits) && first?.of === 'mode') desk.chooseMode(first.mode);
  };
  const { draft } = desk.store.reading();
  return (
    <div className="ml-auto flex flex-wrap gap-x-4">
      <LinkButton onClick={() => made(addMode(draft, nextName(desk), desk.makeId))}>
        {DRAFT_SCREEN_WORDS.addMode}
      </LinkButton>
      {mode === undefined ? null : (
        <>
          <LinkButton onClick={() => made(copyMode(draft, mode.id, desk.makeId))}>
            {DRAFT_SCREEN_WORDS.copyMode}
          </LinkButton>
          <LinkButton onClick={() => desk.set({ window: { kind: 'remove-mode' } })}>
            {DRAFT_SCREEN_WORDS.removeMode}
          </LinkButton>
        </>
      )}
    </div>
  );
}

function nextName(desk: Desk): string {
  const names = desk.store.reading().draft.modes.map((mode) => mode.name);
  if (!names.includes(DRAFT_SCREEN_WORDS.newMode)) return DRAFT_SCREEN_WORDS.newMode;
  const numbers = Array.from({ length: names.length + 1 }, (_, at) => `${DRAFT_SCREEN_WORDS.newMode} ${at + 2}`);
  return numbers.find((name) => !names.includes(name)) ?? DRAFT_SCREEN_WORDS.newMode;
}

function ModeFacts({ desk, mode }: ModeProps) {
  const { draft, troubles } = useReading(desk.store);
  const own = troubles.filter(({ where }) => where.of === 'mode' && where.mode === mode.id);
  const field = (name: Exclude<ModeField, 'order' | 'kept'>) => ({
    store: desk.store,
    value: mode[name],
    where: { fixture: mode.id, field: name },
    onWrite: (text: string) => carryOut(desk, [{ of: 'mode', mode: mode.id, field: name, value: text.trim() }]),
  });
  return (
    <>
      <div className="grid grid-cols-[repeat(auto-fill,minmax(14rem,1fr))] gap-x-4 gap-y-2">
        <DraftField label={DRAFT_SCREEN_WORDS.modeName} hint={DRAFT_SCREEN_WORDS.modeNameHint} {...field('name')} />
        <DraftField label={DRAFT_SCREEN_WORDS.firmware} hint={DRAFT_SCREEN_WORDS.firmwareHint} {...field('firmware')} />
        <DraftField label={DRAFT_SCREEN_WORDS.description} {...field('description')} />
      </div>
      {own.map((trouble) => (
        <p key={trouble.kind}>
          <Mark severity={stopsPublishing(trouble) ? 'blocker' : 'caution'} /> {draftTroubleSentence(trouble, draft)}
        </p>
      ))}
    </>
  );
}

function RemoveMode({ desk, mode }: { readonly desk: Desk; readonly mode: DraftMode | undefined }) {
  const asked = useDesk(desk, (state) => state.window?.kind === 'remove-mode');
  if (!asked || mode === undefined) return null;
  const close = () => desk.set({ window: undefined });
  return (
    <ConfirmDialog
      title={DRAFT_SCREEN_WORDS.removeModeTitle(mode.name)}
      about={DRAFT_SCREEN_WORDS.removeModeAbout(mode.rows.length)}
      submit={DRAFT_SCREEN_WORDS.removeModeSubmit}
      busy={false}
      refused={undefined}
      onConfirm={() => {
        close();
        carryOut(desk, removeMode(desk.store.reading().draft, mode.id));
      }}
      onClose={close}
    />
  );
}
