import { useParams } from 'next/navigation';

const SHELL = '_shell';

/**
 * The id of the rig whose page this is. Without a network every rig's page is opened from one kept page, which was made
 * for no rig: then the id is read from the address. In the browser only.
 */
export function useRigId(): string {
  const { rig } = useParams<{ rig: string }>();
  return rig === SHELL ? (window.location.pathname.split('/')[2] ?? '') : rig;
}
