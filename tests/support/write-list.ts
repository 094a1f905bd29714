import type { Rng } from '#base/rng.ts';

/** One unit as somebody's list has it. `start` null: not patched. */
export interface ListedUnit {
  readonly position: string;
  readonly unit: number;
  readonly channel: number;
  readonly type: string;
  readonly mode: string;
  readonly slots: number;
  readonly universe: number;
  readonly start: number | null;
  readonly purpose: string;
}

type Part = 'position' | 'unit' | 'channel' | 'type' | 'mode' | 'slots' | 'universe' | 'address' | 'purpose' | 'load';

// Headings as crews write them, per language. Source: common practice.
const HEADINGS: readonly Readonly<Record<Part, readonly string[]>>[] = [
  {
    position: ['Position', 'Location', 'Pos.'],
    unit: ['Unit', 'Unit #', 'No.'],
    channel: ['Channel', 'Chan', 'CH'],
    type: ['Type', 'Fixture', 'Instrument Type'],
    mode: ['Mode', 'DMX mode'],
    slots: ['Footprint', 'Slots', 'Channels', '# of channels'],
    universe: ['Universe', 'Univ', 'U'],
    address: ['Address', 'DMX', 'Start address', 'Patch'],
    purpose: ['Purpose', 'Focus', 'Use'],
    load: ['Load (kW)', 'Power'],
  },
  {
    position: ['Position', 'Hängeposition', 'Ort'],
    unit: ['Nr.', 'Nummer', 'Lfd. Nr.'],
    channel: ['Kanal', 'Kreis', 'Kanal-Nr.'],
    type: ['Gerät', 'Scheinwerfer', 'Gerätetyp'],
    mode: ['Betriebsart', 'Modus'],
    slots: ['Kanäle', 'Anzahl Kanäle', 'Slots'],
    universe: ['Universum', 'DMX-Linie'],
    address: ['DMX', 'Adresse', 'DMX-Adresse', 'Startadresse'],
    purpose: ['Zweck', 'Fokus', 'Verwendung'],
    load: ['Leistung (kW)'],
  },
  {
    position: ['Perche', 'Emplacement', 'Position'],
    unit: ['N°', 'Numéro', 'Unité'],
    channel: ['Canal', 'Circuit', 'N° de canal'],
    type: ['Projecteur', 'Appareil'],
    mode: ['Mode', 'Mode DMX'],
    slots: ['Canaux', 'Nb canaux', 'Nombre de canaux'],
    universe: ['Univers'],
    address: ['Adresse', 'Adresse DMX'],
    purpose: ['Usage', 'Fonction', 'Réglage'],
    load: ['Puissance (kW)'],
  },
  {
    position: ['Posición', 'Vara', 'Ubicación'],
    unit: ['Nº', 'Número', 'Unidad'],
    channel: ['Canal'],
    type: ['Aparato', 'Foco', 'Proyector'],
    mode: ['Modo'],
    slots: ['Canales', 'Nº de canales'],
    universe: ['Universo'],
    address: ['Dirección', 'Dirección DMX'],
    purpose: ['Uso', 'Función'],
    load: ['Potencia (kW)'],
  },
  {
    position: ['Posizione', 'Americana'],
    unit: ['N.', 'Numero', 'Unità'],
    channel: ['Canale'],
    type: ['Proiettore', 'Apparecchio', 'Tipo'],
    mode: ['Modalità', 'Modo'],
    slots: ['Canali', 'N. canali', 'Numero canali'],
    universe: ['Universo'],
    address: ['Indirizzo', 'Indirizzo DMX'],
    purpose: ['Uso', 'Puntamento'],
    load: ['Potenza (kW)'],
  },
  {
    position: ['Positie', 'Trek', 'Plaats'],
    unit: ['Nr', 'Nummer'],
    channel: ['Kanaal', 'Kring'],
    type: ['Armatuur', 'Toestel'],
    mode: ['Modus'],
    slots: ['Kanalen', 'Aantal kanalen'],
    universe: ['Universum', 'Universe'],
    address: ['Adres', 'DMX-adres', 'Startadres'],
    purpose: ['Functie', 'Doel'],
    load: ['Vermogen (kW)'],
  },
  {
    position: ['Posição', 'Vara', 'Local'],
    unit: ['Nº', 'Número', 'Unidade'],
    channel: ['Canal'],
    type: ['Aparelho', 'Projetor', 'Refletor'],
    mode: ['Modo'],
    slots: ['Canais', 'Nº de canais'],
    universe: ['Universo'],
    address: ['Endereço', 'Endereço DMX'],
    purpose: ['Função', 'Uso'],
    load: ['Potência (kW)'],
  },
  {
    position: ['Pozycja', 'Miejsce', 'Sztankiet'],
    unit: ['Nr', 'Numer', 'Lp.'],
    channel: ['Kanał'],
    type: ['Urządzenie', 'Reflektor', 'Typ'],
    mode: ['Tryb'],
    slots: ['Kanały', 'Liczba kanałów'],
    universe: ['Uniwersum', 'Linia DMX'],
    address: ['Adres', 'Adres DMX', 'Adres startowy'],
    purpose: ['Przeznaczenie', 'Funkcja'],
    load: ['Moc (kW)'],
  },
  {
    position: ['Position', 'Plats', 'Placering'],
    unit: ['Nr', 'Nummer', 'Enhet'],
    channel: ['Kanal'],
    type: ['Armatur', 'Strålkastare', 'Lyskaster'],
    mode: ['Läge', 'Modus', 'Mode'],
    slots: ['Kanaler', 'Antal kanaler', 'Antall kanaler'],
    universe: ['Universum', 'Univers'],
    address: ['Adress', 'DMX-adress', 'Startadresse'],
    purpose: ['Funktion', 'Formål', 'Syfte'],
    load: ['Effekt (kW)'],
  },
];

const TOTALS = ['Total', 'Summe', 'Total général', 'Totale', 'Suma', 'Totaal', 'Summa', 'Sum', 'Gesamt:', 'I alt'];
const DELIMITERS = [',', ';', '\t', '|'];

export interface WrittenList {
  readonly bytes: Uint8Array;
  /** How it was written, to tell a failing one by. */
  readonly habits: string;
}

/** Writes units as a list of random habits: language, delimiter, encoding, address notation, titles, sums, headings per position. */
export function writeList(rng: Rng, units: readonly ListedUnit[]): WrittenList {
  const words = rng.pick(HEADINGS);
  const perPosition = rng.int(2) === 0;
  const notation = rng.pick(['two columns', 'colon', 'slash', 'point', 'padded point', 'absolute'] as const);
  const delimiter = rng.pick(DELIMITERS);
  const parts = order(rng, perPosition, notation === 'two columns');
  const cell = (unit: ListedUnit, part: Part) => cellText(unit, part, notation);
  const headings = parts.map((part) => rng.pick(words[part]));
  const pad = (cells: readonly string[]) => [...cells, ...Array(Math.max(0, parts.length - cells.length)).fill('')];
  const lines: string[][] = [];
  const repeat = rng.int(4) === 0;
  if (rng.int(2) === 0) lines.push(pad(['Rig of the season, version 3']), pad(['as hung 3.4.']), pad([]));
  lines.push(headings);
  let at = '';
  for (const unit of units) {
    if (unit.position !== at) {
      if (at !== '' && rng.int(2) === 0) lines.push(pad([]));
      if (at !== '' && repeat) lines.push(headings);
      if (perPosition) lines.push(pad([unit.position]));
      at = unit.position;
    }
    lines.push(parts.map((part) => cell(unit, part)));
  }
  if (rng.int(2) === 0) lines.push(pad([]), sumLine(rng, parts));
  const text = lines
    .map((line) => line.map((each) => quoted(each, delimiter)).join(delimiter))
    .join(rng.pick(['\r\n', '\n', '\r']));
  const encoding = rng.pick(['utf-8', 'utf-8 marked', 'utf-16-le marked', 'utf-16-be', 'windows-1252'] as const);
  const habits = JSON.stringify({ headings, notation, delimiter, encoding, perPosition, repeat });
  return { bytes: encode(text, encoding), habits };
}

function order(rng: Rng, perPosition: boolean, two: boolean): readonly Part[] {
  const parts: Part[] = ['unit', 'channel', 'type', 'mode', 'slots', 'address', 'purpose'];
  if (rng.int(2) === 0) parts.push('load');
  const shuffled = parts
    .map((part) => ({ part, rank: rng.next() }))
    .sort((a, b) => a.rank - b.rank)
    .map(({ part }) => part)
    .flatMap((part): Part[] => (part === 'address' && two ? ['universe', 'address'] : [part]));
  return perPosition ? shuffled : ['position', ...shuffled];
}

type Notation = 'two columns' | 'colon' | 'slash' | 'point' | 'padded point' | 'absolute';

function cellText(unit: ListedUnit, part: Part, notation: Notation): string {
  switch (part) {
    case 'address':
      return unit.start === null ? '' : addressText(unit.universe, unit.start, notation);
    case 'universe':
      return unit.start === null ? '' : String(unit.universe);
    case 'load':
      return '0,75';
    default:
      return String(unit[part]);
  }
}

function addressText(universe: number, start: number, notation: Notation): string {
  if (notation === 'two columns') return String(start);
  if (notation === 'absolute') return String((universe - 1) * 512 + start);
  if (notation === 'padded point') return `${universe}.${String(start).padStart(3, '0')}`;
  return `${universe}${{ colon: ':', slash: '/', point: '.' }[notation]}${start}`;
}

function sumLine(rng: Rng, parts: readonly Part[]): string[] {
  const last = parts.indexOf('load');
  return parts.map((_, column) => (column === 0 ? rng.pick(TOTALS) : column === last ? '47,22' : ''));
}

function quoted(text: string, delimiter: string): string {
  return text.includes(delimiter) || text.includes('"') ? `"${text.replaceAll('"', '""')}"` : text;
}

function encode(text: string, encoding: string): Uint8Array {
  if (encoding.startsWith('utf-8')) return Buffer.from((encoding === 'utf-8' ? '' : '\ufeff') + text);
  if (encoding === 'utf-16-le marked') return Buffer.from(`\ufeff${text}`, 'utf16le');
  if (encoding === 'utf-16-be') return Buffer.from(text, 'utf16le').swap16();
  // Latin-1 is Windows-1252 where no letter lies in 0x80 to 0x9F; a list with others stays UTF-8.
  return [...text].every((letter) => letter.charCodeAt(0) < 0x100) ? Buffer.from(text, 'latin1') : Buffer.from(text);
}
