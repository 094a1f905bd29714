/** The name of a compression method of a zip entry. Source: the format's APPNOTE, 4.4.5. */
export function compressionMethod(method: number): string {
  return NAMES[method] ?? `method ${method}`;
}

const NAMES: Readonly<Record<number, string>> = {
  0: 'stored',
  1: 'shrunk',
  6: 'imploded',
  8: 'deflate',
  9: 'deflate64',
  12: 'bzip2',
  14: 'LZMA',
  93: 'zstandard',
  95: 'XZ',
  98: 'PPMd',
  99: 'AES',
};
