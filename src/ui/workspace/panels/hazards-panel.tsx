import { useState } from 'react';
import type { SignedHazard } from '#engine/model/fixture-type.ts';
import { SIGNED_HAZARDS } from '#engine/model/fixture-type.ts';
import { hazardsOfRig, type RigHazard } from '#engine/type/hazards-of-rig.ts';
import { CAUTION_FOOT, hazardCautions } from '#words/fixture-types.ts';
import { hazardWords } from '#words/library.ts';
import { HAZARDS_WORDS } from '#words/rig-types.ts';
import type { Sheet } from '../../grid/sheet.ts';
import { carryOut } from '../../grid/sheet-actions.ts';
import { Button } from '../../kit/button.tsx';
import { LinkButton } from '../../kit/link-button.tsx';
import { Mark } from '../../kit/mark.tsx';
import { TextField } from '../../kit/text-field.tsx';
import { today } from '../../kit/today.ts';
import { useCalmRig } from '../../live/use-calm-rig.ts';
import { Panel } from '../panel.tsx';

export interface HazardsPanelProps {
  readonly sheet: Sheet;
  readonly onClose: () => void;
}

/** What can hurt in this rig, with its usual caution, and who answers for it. */
export function HazardsPanel({ sheet, onClose }: HazardsPanelProps) {
  const hazards = hazardsOfRig(useCalmRig(sheet.store));
  return (
    <Panel title={HAZARDS_WORDS.title} about={HAZARDS_WORDS.about} onClose={onClose}>
      {hazards.length === 0 ? <p>{HAZARDS_WORDS.none}</p> : null}
      <ul className="flex flex-col gap-5">
        {hazards.map((hazard) => (
          <li key={hazard.hazard} className="flex flex-col gap-1">
            <OneHazard sheet={sheet} of={hazard} />
          </li>
        ))}
      </ul>
      {hazards.length === 0 ? null : <p className="text-soft">{CAUTION_FOOT}</p>}
    </Panel>
  );
}

function OneHazard({ sheet, of }: { readonly sheet: Sheet; readonly of: RigHazard }) {
  const signed = SIGNED_HAZARDS.find((hazard) => hazard === of.hazard);
  return (
    <>
      <h3 className="first-letter:uppercase">{hazardWords(of.hazards).join(', ')}</h3>
      <p className="text-soft">{HAZARDS_WORDS.units(of.units, of.types)}</p>
      {hazardCautions(of.hazards).map((caution) => (
        <p key={caution}>
          <Mark severity="caution" className="mr-1" />
          {caution}
        </p>
      ))}
      {signed === undefined || of.toSign.length === 0 ? (
        <p className="text-soft">{HAZARDS_WORDS.caution}</p>
      ) : (
        <Signing sheet={sheet} of={of} hazard={signed} />
      )}
    </>
  );
}

interface SigningProps {
  readonly sheet: Sheet;
  readonly of: RigHazard;
  readonly hazard: SignedHazard;
}

function Signing({ sheet, of: { signature, toSign, open }, hazard }: SigningProps) {
  const [person, setPerson] = useState('');
  const frozen = !sheet.store.canEdit();
  const sign = (name: string) => {
    const edit = { kind: 'set-signature', hazard, person: name.trim(), on: today(), types: toSign } as const;
    carryOut(sheet, { name: 'sign-hazard', edits: [edit] });
    setPerson('');
  };
  if (signature !== undefined) {
    return (
      <div className="flex flex-col gap-1">
        <p className="flex flex-wrap gap-x-3">
          <span>{HAZARDS_WORDS.signed(signature.person, signature.on)}</span>
          {frozen ? null : <LinkButton onClick={() => sign('')}>{HAZARDS_WORDS.takeBack}</LinkButton>}
        </p>
        {open.length === 0 ? null : (
          <>
            <p>
              {HAZARDS_WORDS.renew} {open.join(', ')}
            </p>
            {frozen ? null : (
              <div>
                <Button onClick={() => sign(signature.person)}>{HAZARDS_WORDS.answerForThese(signature.person)}</Button>
              </div>
            )}
          </>
        )}
      </div>
    );
  }
  if (frozen) return null;
  return (
    <form
      className="flex flex-wrap items-end gap-2"
      onSubmit={(event) => {
        event.preventDefault();
        if (person.trim() !== '') sign(person);
      }}
    >
      <div className="min-w-40 flex-1">
        <TextField
          label={HAZARDS_WORDS.person(hazard)}
          placeholder={HAZARDS_WORDS.personHint}
          autoComplete="off"
          value={person}
          onText={setPerson}
        />
      </div>
      <Button type="submit" disabled={person.trim() === ''}>
        {HAZARDS_WORDS.sign}
      </Button>
    </form>
  );
}
