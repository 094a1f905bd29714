/** What the server says to a request that no procedure ever saw. */
export const HTTP_SENTENCES = {
  noSuchDoor: 'There is nothing at this address. Check the address.',
  wrongMethod: (allowed: string) => `This address takes ${allowed} only.`,
  foreignOrigin:
    'This request came from a page of another site, or from a program that does not say where it comes from. Nothing was done. Open Rigledger itself and try again.',
  notJson: 'This request could not be read: its body has to be JSON. Nothing was done.',
  notUnderstood: 'This request could not be understood. Nothing was done. Reload the page and try again.',
  notAFile: 'This address takes a file as it is (application/octet-stream or application/zip). Nothing was done.',
  tooManyFiles: (files: number) =>
    `${files} files of yours are being read already. Nothing was done. Wait until one is through, then send this one again.`,
  tooManyArchives:
    'An archive of yours is on its way already, or others are sending several. Nothing was done. Try again once that is through.',
  busyReading: 'Others are sending many files right now. Nothing was done. Send this one again in a moment.',
  tooLarge: (bytes: number) => `This request is larger than ${bytes} bytes. Nothing was done. Send less at once.`,
  tooSlow: 'This request took too long to arrive. Nothing was done. Try again on a better connection.',
  tooManyCalls: (calls: number) => `This request asks for more than ${calls} things at once. Ask in several requests.`,
  unreadable: (field: string, why: string) => (field === '' ? why : `${field}: ${why}`),
  broken:
    'Something broke on the server; nothing was changed. Try again. If it happens again, look into the log of the server.',
  socketOnly: 'This address takes sockets only. Open the rig in Rigledger.',
  noSuchSheet: 'There is no such sheet. Sheets are patch, channels, universes and findings.',
} as const;
