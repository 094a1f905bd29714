/** Gives the browser what was made here, or fetched, to save as a file. */
export function saveFile(name: string, type: string, chunks: Iterable<BlobPart>): void {
  const address = URL.createObjectURL(new Blob([...chunks], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  URL.revokeObjectURL(address);
}
