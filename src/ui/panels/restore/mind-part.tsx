import { useMemo } from 'react';
import type { RestoreSheet } from '#engine/diff/restore.ts';
import type { Rig } from '#engine/model/rig.ts';
import { restoreCautions } from '#engine/sheet/restore-sheet.ts';
import { RESTORE_STANDING, RESTORE_WORDS as words } from '#words/restore.ts';
import { Mark } from '../../kit/mark.tsx';
import { Cautions } from '../../plant/cautions.tsx';
import { usePrinting } from '../../print/use-printing.ts';
import { PHONE, useMedia } from '../../workspace/use-media.ts';

export interface MindPartProps {
  readonly sheet: RestoreSheet;
  readonly house: Rig;
}

/** What to mind where something is lifted or plugged: in one line on a phone, which opens; written out at a desk and on paper. */
export function MindPart({ sheet, house }: MindPartProps) {
  const phone = useMedia(PHONE);
  const printing = usePrinting();
  const lines = useMemo(() => restoreCautions(sheet, house, RESTORE_STANDING), [sheet, house]);
  const texts = lines.flatMap((line) => (line.kind === 'caution' ? [named(line.type, line.text)] : []));
  if (texts.length === 0) return null;
  if (!phone || printing)
    return (
      <div className="flex flex-col gap-1">
        <Cautions texts={texts} />
      </div>
    );
  return (
    <details>
      <summary className="min-h-control py-2">
        <Mark severity="caution" className="mr-1" />
        {words.mind}
      </summary>
      <Cautions texts={texts} />
    </details>
  );
}

const named = (type: string, text: string) => (type === '' ? text : `${type}: ${text}`);
