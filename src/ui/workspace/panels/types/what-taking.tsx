import { getRow } from '#base/table.ts';
import { applyEdits } from '#engine/model/apply-edits.ts';
import type { Edit } from '#engine/model/edit.ts';
import type { FixtureType } from '#engine/model/fixture-type.ts';
import type { Rig } from '#engine/model/rig.ts';
import type { TakingPreview } from '#engine/patch/preview-taking.ts';
import { findingSentence, unitName } from '#words/findings.ts';
import { CAUTION_FOOT, hazardCautions } from '#words/fixture-types.ts';
import { TAKE_WORDS } from '#words/rig-types.ts';
import { PREVIEW_WORDS, valueWords } from '#words/sheet.ts';
import { Mark } from '../../../kit/mark.tsx';

export interface WhatTakingProps {
  readonly rig: Rig;
  readonly type: FixtureType;
  readonly preview: TakingPreview;
}

/** Lines of a list that are shown. */
const MOST = 20;

/** How many units some moves move. */
export const unitsMoved = (moves: readonly Edit[]): number =>
  new Set(moves.flatMap((edit) => (edit.kind === 'set-cell' ? [edit.fixture] : []))).size;

/** What taking a type does: who takes other slots, which blockers come, where units could go, and what to mind. */
export function WhatTaking({ rig, type, preview }: WhatTakingProps) {
  const { resized, raised, moves, left } = preview;
  const cautions = hazardCautions(type.hazards);
  return (
    <>
      <section>
        <h3>{TAKE_WORDS.resized}</h3>
        {resized.length === 0 ? <p className="text-soft">{TAKE_WORDS.noneResized}</p> : null}
        <ul>
          {resized.map(({ mode, before, after, units }) => (
            <li key={mode}>{TAKE_WORDS.resizedLine(units.length, mode, before, after)}</li>
          ))}
        </ul>
      </section>
      <Raised rig={rig} preview={preview} />
      {moves.length === 0 ? null : <Moves rig={rig} moves={moves} />}
      {raised.length > 0 && left.length > 0 ? <p>{TAKE_WORDS.left(left.length)}</p> : null}
      {cautions.length === 0 ? null : (
        <ul>
          {cautions.map((caution) => (
            <li key={caution}>
              <Mark severity="caution" className="mr-1" />
              {caution}
            </li>
          ))}
          <li className="text-soft">{CAUTION_FOOT}</li>
        </ul>
      )}
    </>
  );
}

function Raised({ rig, preview }: Pick<WhatTakingProps, 'rig' | 'preview'>) {
  const { raised } = preview;
  if (raised.length === 0) return <p className="text-soft">{TAKE_WORDS.noneRaised}</p>;
  return (
    <section>
      <h3>{TAKE_WORDS.raised(raised.length)}</h3>
      <ul>
        {raised.slice(0, MOST).map((finding) => (
          <li key={finding.key}>
            <Mark severity={finding.severity} className="mr-1" />
            {findingSentence(finding, rig)}
          </li>
        ))}
      </ul>
      {raised.length > MOST ? <p className="text-soft">{PREVIEW_WORDS.more(raised.length - MOST)}</p> : null}
    </section>
  );
}

function Moves({ rig, moves }: { readonly rig: Rig; readonly moves: readonly Edit[] }) {
  const cells = moves.flatMap((edit) => (edit.kind === 'set-cell' ? [edit] : []));
  const after = applyEdits(rig, moves);
  return (
    <section>
      <h3>{TAKE_WORDS.moves(unitsMoved(moves))}</h3>
      <ul>
        {cells.slice(0, MOST).map(({ fixture, field, value }) => (
          <li key={`${fixture} ${field}`}>
            {unitName(getRow(after.fixtures, fixture))} → <b>{valueWords(field, value)}</b>
          </li>
        ))}
      </ul>
      {cells.length > MOST ? <p className="text-soft">{PREVIEW_WORDS.more(cells.length - MOST)}</p> : null}
    </section>
  );
}
