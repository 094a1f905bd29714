import { Workspace } from '../../workspace/workspace.tsx';
import { useRigId } from './use-rig-id.ts';

/** The sheet of the rig in the address, made anew for each rig. */
export function SheetPage() {
  const rigId = useRigId();
  return <Workspace key={rigId} rigId={rigId} />;
}
