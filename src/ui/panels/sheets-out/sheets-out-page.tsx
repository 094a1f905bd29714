import { useState } from 'react';
import { SHEET_KINDS } from '#engine/sheet/sheet.ts';
import type { RigSummary } from '#wire/rigs.ts';
import { SHEETS_OUT_WORDS } from '#words/rig-pages.ts';
import { SHEET_ABOUT, SHEET_TITLES } from '#words/sheets.ts';
import { PageFrame } from '../../kit/page-frame.tsx';
import { LINK_CLASSES } from '../../kit/text-link.tsx';
import { Part } from '../part.tsx';
import { RigBanner } from '../rig/rig-banner.tsx';
import { SavedHere } from '../rig/saved-here.tsx';
import { PrintSheet } from './print-sheet.tsx';

/** The sheets of a rig, as downloads and by address. */
export function SheetsOutPage({ rig }: { readonly rig: RigSummary }) {
  return (
    <PageFrame
      title={`${SHEETS_OUT_WORDS.title} · ${rig.name}`}
      banner={<RigBanner rig={rig} rigId={rig.id} page="sheets-out" aside={<SavedHere />} />}
    >
      <Sheets rigId={rig.id} rigName={rig.name} />
    </PageFrame>
  );
}

function Sheets({ rigId, rigName }: { readonly rigId: string; readonly rigName: string }) {
  const [bom, setBom] = useState(false);
  const words = SHEETS_OUT_WORDS;
  return (
    <div className="flex flex-col gap-6">
      <p className="max-w-prose">
        {words.about} {words.unsaved} {words.address}
      </p>
      <div>
        <label className="inline-flex min-h-control items-center gap-2 font-medium">
          <input
            type="checkbox"
            className="size-4 accent-ink"
            checked={bom}
            aria-describedby="bom-hint"
            onChange={(event) => setBom(event.currentTarget.checked)}
          />
          {words.bom}
        </label>
        <p id="bom-hint" className="text-small text-soft">
          {words.bomHint}
        </p>
      </div>
      {SHEET_KINDS.map((sheet) => {
        const path = `/api/rigs/${rigId}/sheets/${sheet}.csv${bom ? '?bom=1' : ''}`;
        return (
          <Part key={sheet} title={SHEET_TITLES[sheet]} about={SHEET_ABOUT[sheet]}>
            <p className="flex flex-wrap items-baseline gap-x-5 gap-y-1 py-2">
              {/* Not a page of ours: the browser asks the server and saves the answer. */}
              <a href={path} download className={LINK_CLASSES}>
                {words.download(SHEET_TITLES[sheet])}
              </a>
              <PrintSheet kind={sheet} rigName={rigName} />
              <code className="text-small text-soft [overflow-wrap:anywhere] select-all">
                {window.location.origin}
                {path}
              </code>
            </p>
          </Part>
        );
      })}
      <p className="text-soft">{words.caution}</p>
    </div>
  );
}
