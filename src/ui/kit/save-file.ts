/** Gives the browser a text made here to save as a file. */
export function saveFile(name: string, type: string, chunks: Iterable<string>): void {
  const address = URL.createObjectURL(new Blob([...chunks], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  URL.revokeObjectURL(address);
}
