import { SaveState } from '../../kit/save-state.tsx';
import { useSaveStatus } from '../../live/open-rig.tsx';

/** Where the edits made on this device stand. */
export function SavedHere() {
  const status = useSaveStatus();
  if (status === undefined) return null;
  return <SaveState state={status.state} detail={status.detail === '' ? undefined : status.detail} />;
}
