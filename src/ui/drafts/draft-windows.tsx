import type { DraftTrouble } from '#engine/draft/draft-trouble.ts';
import { DRAFT_KEYS, DRAFT_SCREEN_WORDS, PASTE_WORDS } from '#words/draft-screen.ts';
import { Button } from '../kit/button.tsx';
import { Dialog } from '../kit/dialog.tsx';
import { ConfirmDialog } from '../panels/confirm-dialog.tsx';
import { KeysDialog } from '../workspace/panels/keys-dialog.tsx';
import { RenumberDialog } from './chart/renumber-dialog.tsx';
import { RepeatDialog } from './chart/repeat-dialog.tsx';
import type { Desk } from './desk.ts';
import type { Doors } from './doors.ts';
import { PastePanel } from './paste/paste-panel.tsx';
import { PublishDialog } from './publish-dialog.tsx';
import { useDesk } from './use-desk.ts';

export interface DraftWindowsProps {
  readonly desk: Desk;
  readonly doors: Doors;
  readonly onGo: (trouble: DraftTrouble) => void;
  /** Gives the focus to the chart. */
  readonly onChart: () => void;
}

/** The window that is open over the screen. */
export function DraftWindows({ desk, doors, onGo, onChart }: DraftWindowsProps) {
  const open = useDesk(desk, (state) => state.window);
  const close = () => desk.set({ window: undefined });
  switch (open?.kind) {
    case 'paste':
      return (
        <Dialog
          title={PASTE_WORDS.title}
          width="wide"
          onClose={close}
          answers={<Button onClick={close}>{DRAFT_SCREEN_WORDS.leave}</Button>}
        >
          <PastePanel
            desk={desk}
            text={open.text}
            onTaken={() => {
              close();
              requestAnimationFrame(onChart);
            }}
          />
        </Dialog>
      );
    case 'repeat':
      return <RepeatDialog desk={desk} />;
    case 'renumber':
      return <RenumberDialog desk={desk} />;
    case 'publish':
      return <PublishDialog desk={desk} door={doors.publish} onGo={onGo} />;
    case 'keys':
      return <KeysDialog groups={DRAFT_KEYS} onClose={close} />;
    case 'drop':
      return (
        <ConfirmDialog
          title={DRAFT_SCREEN_WORDS.dropTitle}
          about={DRAFT_SCREEN_WORDS.dropAbout}
          submit={DRAFT_SCREEN_WORDS.drop}
          busy={doors.drop.busy}
          refused={doors.drop.refused}
          onConfirm={() => doors.drop.ask()}
          onClose={close}
        />
      );
    // Beside what they are about: see `modes/`.
    case 'remove-mode':
    case 'open-chart':
    case undefined:
      return null;
  }
}
