import { zipSync } from 'fflate';

/** A zip of one entry whose headers, both of them, were changed behind the writer's back. */
export function forgedZip(
  name: string,
  content: Uint8Array,
  forge: { readonly method?: number; readonly size?: number; readonly crc?: number; readonly flags?: number },
): Uint8Array {
  const zip = zipSync({ [name]: content }, { level: 9 });
  const view = new DataView(zip.buffer, zip.byteOffset, zip.byteLength);
  for (let at = 0; at + 46 <= zip.length; at++) {
    const signature = view.getUint32(at, true);
    // Fields stand two bytes on in the list at the end of the archive. Source: the format's APPNOTE, 4.3.7 and 4.3.12.
    const shift = signature === 0x04034b50 ? 0 : signature === 0x02014b50 ? 2 : undefined;
    if (shift === undefined) continue;
    if (forge.flags !== undefined) view.setUint16(at + 6 + shift, forge.flags, true);
    if (forge.method !== undefined) view.setUint16(at + 8 + shift, forge.method, true);
    if (forge.crc !== undefined) view.setUint32(at + 14 + shift, forge.crc, true);
    if (forge.size !== undefined) view.setUint32(at + 22 + shift, forge.size, true);
  }
  return zip;
}

/** A zip in which two entries have the same name. */
export function twinZip(name: string, content: Uint8Array): Uint8Array {
  const twin = `${name.slice(0, -1)}~`;
  const zip = zipSync({ [name]: content, [twin]: content });
  return new Uint8Array(Buffer.from(Buffer.from(zip).toString('latin1').replaceAll(twin, name), 'latin1'));
}
