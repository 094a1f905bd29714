/** The text of bytes that came deflated and in base64. */
export async function inflateText(base64: string): Promise<string> {
  const bytes = Uint8Array.from(atob(base64), (sign) => sign.charCodeAt(0));
  const stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream('deflate'));
  return new Response(stream).text();
}
