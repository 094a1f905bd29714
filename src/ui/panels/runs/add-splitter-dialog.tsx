import { useState } from 'react';
import { RUNS_WORDS as words } from '#words/runs.ts';
import { TextField } from '../../kit/text-field.tsx';
import { AskNameDialog } from '../ask-name-dialog.tsx';

export interface AddSplitterDialogProps {
  readonly onSplitter: (made: { readonly name: string; readonly outputs: number }) => void;
  readonly onClose: () => void;
}

/** Asks for a splitter's name and how many outputs it has. */
export function AddSplitterDialog({ onSplitter, onClose }: AddSplitterDialogProps) {
  const [outputs, setOutputs] = useState('');
  return (
    <AskNameDialog
      title={words.splitterTitle}
      label={words.splitterName}
      submit={words.splitterDone}
      busy={false}
      refused={undefined}
      onName={(name) => onSplitter({ name, outputs: Number(outputs) })}
      onClose={onClose}
    >
      <TextField label={words.outputs} required type="number" min={1} max={64} value={outputs} onText={setOutputs} />
    </AskNameDialog>
  );
}
