import { rowsOf } from '#base/table.ts';
import { foldName } from '../../model/ids.ts';
import type { Rig } from '../../model/rig.ts';

/** What one typed line says of a card: its cells, as far as it says them. */
export type LineCells = Readonly<Record<string, string | number>>;

const DAY = /^\d{4}-\d{2}-\d{2}$/;
const PHONE = /^\+?[\d\s()/.-]{5,}$/;
const COUNTED = /^(\d{1,6})\s*(?:[x×]\s+|[x×](?=\D)|\s)\s*(\S.*)$/u;

const partsOf = (line: string): string[] => line.split(',').map((part) => part.trim());

/** `2 Halyard spot, Standard, crate 4`: how many, type, mode where the rig has one of that name, where it is. [HO4] */
export function spareLine(rig: Rig, line: string): LineCells {
  const [first = '', ...rest] = partsOf(line);
  const { count, name } = countedName(first);
  const modes = new Set([...rowsOf(rig.modes)].map(({ mode }) => foldName(mode)));
  const isMode = rest.length > 1 || modes.has(foldName(rest[0] ?? ''));
  const [mode, ...where] = isMode ? rest : ['', ...rest];
  return filled({ type: knownType(rig, name), mode, count: count ?? 1, where: where.join(', ') });
}

/** `Hollis Brandreth, rigger, 0100 2000, hollis@house.invalid`: the name first, the others known by what they look like. [HO4] */
export function contactLine(line: string): LineCells {
  const [name, ...rest] = partsOf(line);
  const email = rest.find((part) => part.includes('@'));
  const phone = rest.find((part) => PHONE.test(part));
  const role = rest.filter((part) => part !== email && part !== phone).join(', ');
  return filled({ name, role, phone, email });
}

/** `FOH 3, Front bridge, network, rack 2`: name, position, what it carries, where its line ends. [HO4] */
export function outletLine(line: string): LineCells {
  const [name, position, ...rest] = partsOf(line);
  const carries = rest.map(foldName).find((part) => part === 'dmx' || part === 'network');
  const to = rest.filter((part) => foldName(part) !== carries).join(', ');
  return filled({ name, position, carries, to });
}

/** `2 Fogbank hazer, Tide Hire, 2026-12-05`: how many, what, whose, and the day it is due back. [HO4] */
export function hireLine(line: string): LineCells {
  const [first = '', ...rest] = partsOf(line);
  const { count, name } = countedName(first);
  const due = rest.find((part) => DAY.test(part));
  return filled({ item: name, count: count ?? 1, from: rest.filter((part) => part !== due).join(', '), due });
}

function countedName(text: string): { readonly count: number | undefined; readonly name: string } {
  const [, digits, name] = COUNTED.exec(text) ?? [];
  return name === undefined ? { count: undefined, name: text } : { count: Number(digits), name };
}

/** The rig's own name of a type of which a part was typed, when only one has that part. */
function knownType(rig: Rig, text: string): string {
  const wanted = foldName(text);
  const types = new Map([...rowsOf(rig.modes)].map(({ type }) => [foldName(type), type] as const));
  const exact = types.get(wanted);
  if (exact !== undefined || wanted === '') return exact ?? text;
  const holding = [...types].filter(([type]) => type.includes(wanted));
  return holding.length === 1 ? (holding[0]?.[1] ?? text) : text;
}

const filled = (cells: Readonly<Record<string, string | number | undefined>>): LineCells =>
  Object.fromEntries(
    Object.entries(cells).filter((cell): cell is [string, string | number] => cell[1] !== undefined && cell[1] !== ''),
  );
