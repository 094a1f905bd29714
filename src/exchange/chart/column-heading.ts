import { foldWord } from '#engine/type/fold-words.ts';
import { CHART_LIMITS } from './limits.ts';
import { readLead } from './read-lead.ts';
import type { Cell, SplitLine } from './split-lines.ts';

const ROLE_WORDS = {
  slot: 'channel|channels|ch|chan|dmx channel|dmx ch|dmx slot|slot|slots|kanal|kanale|dmx kanal|canal|canal dmx|canale|canale dmx|canaux|voie|address|dmx address|adresse|offset|no|nr|#',
  name: 'function|functions|name|parameter|feature|funktion|funktionen|fonction|fonctions|funcion|funciones|funzione|funzioni|parametre|parametro|bezeichnung|control|what it does',
  attribute: 'attribute|gdtf attribute|gdtf|attribut|attribut gdtf|atributo|attributo',
  value:
    'value|values|dmx value|dmx values|dmx|range|dmx range|decimal|dec|wert|werte|dmx wert|dmx werte|bereich|wertebereich|valeur|valeurs|valeur dmx|plage|valor|valores|valor dmx|valore|valori|valori dmx|rango',
  from: 'from|von|desde|da|min|start|dmx from',
  to: 'to|bis|hasta|a|max|end|dmx to',
  percent: 'percent|percentage|%|prozent|pourcentage|porcentaje|percentuale',
  text: 'description|descriptions|meaning|remark|remarks|comment|comments|note|notes|details|detail|effect|setting|content|beschreibung|bedeutung|bemerkung|bemerkungen|effekt|remarque|remarques|effet|descripcion|efecto|observaciones|descrizione|effetto|note',
  default:
    'default|default value|home|vorgabe|grundwert|standard|standardwert|defaut|valeur par defaut|predeterminado|por defecto|defecto|predefinito',
  highlight: 'highlight',
  break: 'break|dmx break',
} as const;

export type Role = keyof typeof ROLE_WORDS | 'other';

const ROLES: ReadonlyMap<string, Role> = new Map(
  (Object.keys(ROLE_WORDS) as (keyof typeof ROLE_WORDS)[]).flatMap((role) =>
    ROLE_WORDS[role].split('|').map((word): [string, Role] => [word, role]),
  ),
);

/** Which column means what. */
export interface Frame {
  readonly delimited: boolean;
  readonly columns: readonly FrameColumn[];
  /** Names of the columns of slots, left to right; a single one needs none. */
  readonly modes: readonly string[];
}

interface FrameColumn extends Cell {
  readonly role: Role;
}

const fold = (text: string) =>
  foldWord(text)
    .replace(/[^\p{L}\p{N}#%]+/gu, ' ')
    .trim();

const roleOf = (text: string): Role => ROLES.get(fold(text)) ?? 'other';

/**
 * The meaning of columns, when a line is their heading. `below` are some lines after it: unknown headings over numbers are
 * columns of slots too, one for each mode.
 */
export function readColumnHeading(line: SplitLine, below: readonly SplitLine[]): Frame | 'words' | undefined {
  const filled = line.cells.filter((cell) => cell.text !== '');
  if (line.cells.length > CHART_LIMITS.headings) return undefined;
  if (filled.length === 1) return headedByWords(line.text) ? 'words' : undefined;
  const roles = filled.map((cell) => roleOf(cell.text));
  const known = new Set(roles.filter((role) => role !== 'other'));
  const named = known.has('name') || known.has('attribute') || known.has('text') || known.has('value');
  if (!named || (known.size < 2 && !filled.some((cell) => namesMode(cell.text)))) return undefined;
  if (filled.some((cell) => readLead(cell.text) !== undefined && !namesMode(cell.text))) return undefined;
  const columns = oneName(line.cells.map((cell): FrameColumn => ({ ...cell, role: roleOf(cell.text) })));
  return withSlotColumns({ delimited: line.delimited, columns, modes: [] }, below);
}

/** The first column of names names the rows, a second one describes them; without one, that of attributes does. */
function oneName(columns: readonly FrameColumn[]): readonly FrameColumn[] {
  const names = columns.filter((column) => column.role === 'name');
  const [first = columns.find((column) => column.role === 'attribute')] = names;
  return columns.map((column) => {
    if (column === first) return { ...column, role: 'name' };
    return column.role === 'name' ? { ...column, role: 'text' } : column;
  });
}

const namesMode = (text: string) => /\b(?:mode|modus|modo|\d{1,3}\s?-?\s?(?:ch|kanal|canaux|canales))/i.test(text);

/** Headings whose columns came apart into single spaces: `Channel Function Value Description`. */
function headedByWords(text: string): boolean {
  const words = fold(text).split(' ');
  const roles = words.map((word) => (word === 'dmx' ? 'dmx' : (ROLES.get(word) ?? 'other')));
  return (
    words.length >= 2 &&
    words.length <= 8 &&
    roles[0] !== 'other' &&
    roles.every((role) => role !== 'other') &&
    new Set(roles).size >= 2 &&
    (roles.includes('name') || roles.includes('value') || roles.includes('text'))
  );
}

/** Columns that nobody named, over nothing but slots and dashes, hold the slots of a mode. */
function withSlotColumns(frame: Frame, below: readonly SplitLine[]): Frame | undefined {
  const counts = frame.columns.map(() => ({ slots: 0, others: 0 }));
  for (const line of below) {
    if (line.delimited !== frame.delimited || line.cells.length > CHART_LIMITS.columns) continue;
    for (const { cell, column } of placed(line, frame)) {
      const count = counts[column];
      if (cell.text === '' || count === undefined) continue;
      if (isSlotCell(cell.text)) count.slots += 1;
      else count.others += 1;
    }
  }
  const firstName = frame.columns.findIndex((column) => column.role === 'name');
  const columns = frame.columns.map((column, at): FrameColumn => {
    const { slots, others } = counts[at] ?? { slots: 0, others: 0 };
    const over = column.role === 'other' && (at < firstName || firstName < 0 || namesMode(column.text));
    return over && slots > 0 && slots >= others * 3 ? { ...column, role: 'slot' } : column;
  });
  const slots = columns.filter((column) => column.role === 'slot').slice(0, CHART_LIMITS.modes);
  if (slots.length === 0) return undefined;
  const kept = columns.map(
    (column): FrameColumn =>
      column.role === 'slot' && !slots.includes(column) ? { ...column, role: 'other' } : column,
  );
  return { ...frame, columns: kept, modes: slots.length === 1 ? [''] : slots.map((column) => column.text) };
}

const isSlotCell = (text: string) => isDash(text) || (/^\D{0,4}\d/.test(text) && readLead(text)?.rest === '');

export const isDash = (text: string) => /^(?:[-–—−x./]|n\/?a)$/i.test(text);

/** A second line of headings, naming the modes over the columns of slots: `Channel` over `Basic` and `Extended`. */
export function readSubHeading(frame: Frame, line: SplitLine, below: readonly SplitLine[]): Frame | undefined {
  const filled = line.cells.filter((cell) => cell.text !== '');
  if (line.delimited !== frame.delimited || filled.length === 0) return undefined;
  if (filled.some((cell) => isDash(cell.text) || (readLead(cell.text) !== undefined && !namesMode(cell.text))))
    return undefined;
  const isFree = (role: Role) => role === 'slot' || role === 'other';
  const free = line.delimited && filled.every((cell) => isFree(frame.columns[cell.from]?.role ?? 'other'));
  if (!free || filled.length < 2) return undefined;
  const columns = frame.columns.map((column, at): FrameColumn => {
    const text = line.cells[at]?.text ?? '';
    return text === '' ? column : { ...column, text, role: 'other' };
  });
  return withSlotColumns({ ...frame, columns }, below);
}

/** Each cell of a line with the column it stands in: the one it covers most of, else the nearest. */
export function placed(line: SplitLine, frame: Frame): readonly { readonly cell: Cell; readonly column: number }[] {
  if (line.delimited) return line.cells.map((cell, column) => ({ cell, column }));
  return line.cells.map((cell) => ({ cell, column: columnOf(cell, frame.columns) }));
}

function columnOf(cell: Cell, columns: readonly FrameColumn[]): number {
  let best = 0;
  let most = Number.NEGATIVE_INFINITY;
  columns.forEach((column, at) => {
    // Negative when they do not meet: the gap between them.
    const shared = Math.min(cell.to, column.to) - Math.max(cell.from, column.from);
    if (shared > most) {
      most = shared;
      best = at;
    }
  });
  return best;
}
