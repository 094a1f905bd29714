/** The header that names a file to be saved, in both spellings of RFC 6266: for old readers in ASCII, for all others whole (RFC 8187). */
export function attachment(name: string): string {
  const plain = name
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .replace(/[^ -~]|["\\]/g, '_');
  const whole = encodeURIComponent(name).replace(
    /['()*]/g,
    (sign) => `%${sign.charCodeAt(0).toString(16).toUpperCase()}`,
  );
  return `attachment; filename="${plain}"; filename*=UTF-8''${whole}`;
}
