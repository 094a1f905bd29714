import type { GdtfImport } from '#exchange/gdtf/read-description.ts';

/**
 * A type that says its model; when the file within does not, it is called after the file that was sent, which GDTF names
 * `Maker@Model@….gdtf`. Undefined when neither says anything. Source: GDTF (DIN SPEC 15800), file name.
 */
export function namedByFile(imported: GdtfImport, fileName: string): GdtfImport | undefined {
  const { type, report } = imported;
  if (type.model.trim() !== '') return imported;
  const parts = fileName
    .replace(/\.gdtf$/i, '')
    .split('@')
    .map((part) => part.normalize('NFC').replace(/\s+/gu, ' ').trim());
  const [maker = '', model = ''] = parts.length > 1 ? parts : ['', parts[0]];
  if (model === '') return undefined;
  return {
    type: { ...type, model, maker: type.maker.trim() === '' ? maker : type.maker },
    report: { ...report, guesses: [...report.guesses, { kind: 'named-by-file', name: model }] },
  };
}
