import { getRow } from '#base/table.ts';
import { unreachable } from '#base/unreachable.ts';
import type { Rig } from '#engine/model/rig.ts';
import { locksSentence } from '#words/locks.ts';
import { lockedSentence, planRefusalSentence } from '#words/plans.ts';
import { NOTICE_WORDS } from '#words/sheet.ts';
import type { Notice, Sheet } from '../grid/sheet.ts';
import { useSheet } from '../grid/use-sheet.ts';
import { LinkButton } from '../kit/link-button.tsx';

/** What the last step of mine has to say, in one line; announced politely. */
export function NoticeLine({ sheet }: { readonly sheet: Sheet }) {
  const notice = useSheet(sheet, (state) => state.notice);
  return (
    <div role="status" className="contents">
      {notice === undefined ? null : (
        <p className="flex flex-wrap items-center gap-x-4 border-b border-rule-strong bg-selected px-4 py-1 sm:px-5">
          <span>{noticeSentence(notice, sheet.store.rig())}</span>
          <LinkButton onClick={() => sheet.set({ notice: undefined })}>{NOTICE_WORDS.dismiss}</LinkButton>
        </p>
      )}
    </div>
  );
}

function noticeSentence(notice: Notice, rig: Rig): string {
  switch (notice.kind) {
    case 'refused':
      return refusalSentence(notice.refusal, rig);
    case 'no-plan':
      return planRefusalSentence(notice.refusal, rig);
    case 'left-out':
      return NOTICE_WORDS.leftOut(notice.cells);
    case 'cut-short':
      return NOTICE_WORDS.cutShort;
    case 'undone':
      return NOTICE_WORDS.undone(notice.plan);
    case 'redone':
      return NOTICE_WORDS.redone(notice.plan);
    case 'done':
      return NOTICE_WORDS.done(notice.plan);
    case 'locks':
      return locksSentence(notice.units, notice.way);
    case 'nothing-to-undo':
      return NOTICE_WORDS.nothingToUndo;
    case 'nothing-to-redo':
      return NOTICE_WORDS.nothingToRedo;
    case 'no-finding':
      return NOTICE_WORDS.noFinding;
    case 'not-found':
      return NOTICE_WORDS.notFound(notice.text);
    case 'row-gone':
      return NOTICE_WORDS.rowGone(notice.text);
    default:
      return unreachable(notice);
  }
}

/** Why an edit was refused, and what to do next. */
export function refusalSentence(refusal: Extract<Notice, { kind: 'refused' }>['refusal'], rig: Rig): string {
  switch (refusal.code) {
    case 'read-only':
      return NOTICE_WORDS.readOnly;
    case 'locked':
      return `${NOTICE_WORDS.locked} ${lockedSentence(getRow(rig.fixtures, refusal.fixture))}`;
    case 'not-a-rig':
      return NOTICE_WORDS.notARig;
    case 'newer-format':
      return NOTICE_WORDS.newerFormat;
    case 'too-many-edits':
      return NOTICE_WORDS.tooManyEdits(refusal.count, refusal.limit);
    case 'too-many-rows':
      return NOTICE_WORDS.tooManyRows(refusal.count, refusal.limit);
    case 'malformed':
      return NOTICE_WORDS.malformed(refusal.problem);
    default:
      return unreachable(refusal);
  }
}
