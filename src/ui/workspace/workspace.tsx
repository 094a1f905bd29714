/**
 * Placeholder until the sheet lands here. The rig's store is `useOpenRig()` of ../live/open-rig.tsx (undefined until it is
 * open): it stays open while one moves to Lists in and back, so that an import can be undone on the sheet.
 */
export function Workspace({ rigId }: { readonly rigId: string }) {
  return <p>{rigId}</p>;
}
