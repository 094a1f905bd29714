import type { RigSummary } from '#wire/rigs.ts';
import { provenanceShort } from './revisions.ts';
import { RIG_KIND_WORDS } from './screens.ts';

export const RIG_MENU_WORDS = {
  rig: 'Rig',
  name: 'Pages of this rig',
  toRow: 'Its row in the sheet',
  pages: {
    sheet: 'Sheet',
    universes: 'Universes',
    network: 'Network',
    runs: 'Runs',
    supply: 'Supply',
    house: 'House',
    upkeep: 'Upkeep',
    revisions: 'Revisions',
    history: 'History',
    restore: 'Put back',
    'lists-in': 'Lists in',
    'sheets-out': 'Sheets out',
  },
} as const;

/** `show rig at Millrace Playhouse · Saltwind Touring · from “House”, revision 3`. */
export function rigAbout({ kind, venueName, crewName, startedFrom }: RigSummary): string {
  const what = RIG_KIND_WORDS[kind];
  const parts = [venueName === null ? what : `${what} at ${venueName}`, crewName];
  return [...parts, ...(startedFrom === null ? [] : [provenanceShort(startedFrom)])].join(' · ');
}

export const SHEETS_OUT_WORDS = {
  title: 'Sheets out',
  about:
    'Each sheet is a CSV file of the rig as it is saved on the server now, or is printed as it stands on this device. The findings that stand are at its foot.',
  bom: 'Mark the files as UTF-8 with a byte order mark',
  bomHint: 'Some spreadsheets need it to show letters such as ü and é.',
  printWord: 'print',
  csvWord: 'CSV',
  print: (sheet: string) => `Print the ${sheet.toLowerCase()}`,
  download: (sheet: string) => `Take out the ${sheet.toLowerCase()}`,
  address: 'The address beside each sheet is for scripts and other programs, with your sign-in.',
  unsaved: 'Edits that are on this device only are not in the files yet.',
  caution:
    'Figures are planning aids. Local codes, the manufacturer’s instructions and licensed or competent people have the last word.',
} as const;
