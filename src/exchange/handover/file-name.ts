/** `Winter show-r3.handover.zip`: without the signs that file systems keep for themselves. */
export function handoverFileName(rigName: string, number: number): string {
  const name = rigName
    .replace(/[<>:"/\\|?*\p{Cc}]+/gu, ' ')
    .replace(/\s+/g, ' ')
    .replace(/^[. ]+|[. ]+$/g, '');
  return `${name === '' ? 'rig' : name}-r${number}.handover.zip`;
}
