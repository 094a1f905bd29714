import type { Motion } from './selection.ts';

/** What a key asks of the sheet itself. */
export type SheetCommand =
  | { readonly kind: 'move'; readonly motion: Motion }
  | { readonly kind: 'page'; readonly pages: 1 | -1; readonly how: Motion['how'] }
  | { readonly kind: 'tab'; readonly step: 1 | -1 }
  /** Open the cell with what it holds. */
  | { readonly kind: 'open' }
  /** Open the cell with `text` in place of what it holds. */
  | { readonly kind: 'type'; readonly text: string }
  | { readonly kind: SheetDeed };

export type SheetDeed =
  | 'clear'
  | 'select-all'
  | 'fill-down'
  | 'insert-row'
  | 'duplicate-rows'
  | 'remove-rows'
  | 'undo'
  | 'redo';

/** What a key asks of something that stands beside the sheet. */
export interface BesideCommand {
  readonly kind:
    | 'escape'
    | 'series'
    | 'find'
    | 'next-finding'
    | 'previous-finding'
    | 'clear-finding'
    | 'ribbon'
    | 'slots'
    | 'lock'
    | 'keys';
}

export type Command = SheetCommand | BesideCommand;

export interface KeyPress {
  readonly key: string;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly shiftKey: boolean;
  readonly altKey: boolean;
}

const PLAIN: Readonly<Record<string, Command>> = {
  Enter: { kind: 'open' },
  F2: { kind: 'open' },
  Escape: { kind: 'escape' },
  Delete: { kind: 'clear' },
  Backspace: { kind: 'clear' },
  F1: { kind: 'keys' },
  F4: { kind: 'slots' },
  F6: { kind: 'ribbon' },
  F7: { kind: 'lock' },
  F8: { kind: 'next-finding' },
  F9: { kind: 'clear-finding' },
  Tab: { kind: 'tab', step: 1 },
  '?': { kind: 'keys' },
};

const WITH_SHIFT: Readonly<Record<string, Command>> = {
  Tab: { kind: 'tab', step: -1 },
  F8: { kind: 'previous-finding' },
};

const WITH_CTRL: Readonly<Record<string, Command>> = {
  a: { kind: 'select-all' },
  d: { kind: 'fill-down' },
  z: { kind: 'undo' },
  y: { kind: 'redo' },
  f: { kind: 'find' },
  Delete: { kind: 'remove-rows' },
  Backspace: { kind: 'remove-rows' },
};

const WITH_CTRL_SHIFT: Readonly<Record<string, Command>> = {
  z: { kind: 'redo' },
  d: { kind: 'series' },
};

/** Lines and columns of the keys that move; a control key held makes `Home` and `End` go to the corner. */
const MOVES: Readonly<Record<string, readonly [lines: number, columns: number]>> = {
  ArrowUp: [-1, 0],
  ArrowDown: [1, 0],
  ArrowLeft: [0, -1],
  ArrowRight: [0, 1],
  Home: [0, -Infinity],
  End: [0, Infinity],
};

const FAR_MOVES: typeof MOVES = {
  ArrowUp: [-Infinity, 0],
  ArrowDown: [Infinity, 0],
  ArrowLeft: [0, -Infinity],
  ArrowRight: [0, Infinity],
  Home: [-Infinity, -Infinity],
  End: [Infinity, Infinity],
};

/** What a key means while no cell is open for editing; undefined leaves it to the browser. */
export function commandOf(press: KeyPress): Command | undefined {
  const { key, shiftKey } = press;
  const held = press.ctrlKey || press.metaKey;
  if (press.altKey) return altCommand(press, held);
  const how = shiftKey ? 'stretch' : 'go';
  const move = (held ? FAR_MOVES : MOVES)[key];
  if (move) return { kind: 'move', motion: { lines: move[0], columns: move[1], how } };
  if (key === 'PageUp' || key === 'PageDown') return { kind: 'page', pages: key === 'PageUp' ? -1 : 1, how };
  if (held) return (shiftKey ? WITH_CTRL_SHIFT : WITH_CTRL)[key.length === 1 ? key.toLowerCase() : key];
  return (shiftKey ? WITH_SHIFT[key] : undefined) ?? PLAIN[key] ?? typed(key);
}

function altCommand({ key, shiftKey }: KeyPress, held: boolean): Command | undefined {
  // AltGr reads as Ctrl+Alt where it makes a character.
  if (held) return typed(key);
  return key === 'Enter' ? { kind: shiftKey ? 'duplicate-rows' : 'insert-row' } : undefined;
}

function typed(key: string): Command | undefined {
  // An input method or a dead key starts a character that only an open cell can take.
  if (key === 'Process' || key === 'Dead') return { kind: 'type', text: '' };
  return [...key].length === 1 ? { kind: 'type', text: key } : undefined;
}
