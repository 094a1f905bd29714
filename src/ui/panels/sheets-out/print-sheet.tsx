import { useCallback, useMemo, useState } from 'react';
import { makeSheet } from '#engine/sheet/make-sheet.ts';
import type { SheetKind } from '#engine/sheet/sheet.ts';
import { SHEETS_OUT_WORDS as words } from '#words/rig-pages.ts';
import { SHEET_TITLES, sheetHead, standingOf } from '#words/sheets.ts';
import { LinkButton } from '../../kit/link-button.tsx';
import { today } from '../../kit/today.ts';
import { useOpenRig } from '../../live/open-rig.tsx';
import type { RigStore } from '../../live/rig-store.ts';
import { Paper } from '../../print/paper.tsx';

export interface PrintSheetProps {
  readonly kind: SheetKind;
  readonly rigName: string;
}

/** Prints a sheet of the rig as it stands on this device. */
export function PrintSheet({ kind, rigName }: PrintSheetProps) {
  const store = useOpenRig();
  const [printing, setPrinting] = useState(false);
  const done = useCallback(() => setPrinting(false), []);
  return (
    <>
      <LinkButton
        disabled={store === undefined}
        aria-label={words.print(SHEET_TITLES[kind])}
        onClick={() => setPrinting(true)}
      >
        {words.printWord}
      </LinkButton>
      {printing && store !== undefined ? <Printed store={store} kind={kind} rigName={rigName} onDone={done} /> : null}
    </>
  );
}

interface PrintedProps extends PrintSheetProps {
  readonly store: RigStore;
  readonly onDone: () => void;
}

function Printed({ store, kind, rigName, onDone }: PrintedProps) {
  // Made once: what changes while the browser asks for a printer is not on the paper.
  const [made] = useState(() => ({ rig: store.rig(), findings: store.findings(), at: Date.now() }));
  const sheet = useMemo(() => makeSheet(kind, made.rig, standingOf(made.rig, made.findings, today())), [kind, made]);
  return <Paper sheet={sheet} head={sheetHead(kind, rigName, made.at)} onDone={onDone} />;
}
