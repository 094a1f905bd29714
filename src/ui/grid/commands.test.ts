import { describe, expect, it } from 'vitest';
import { commandOf, type KeyPress } from './commands.ts';

/** `Ctrl+Shift+D` as a key press. */
function press(keys: string): KeyPress {
  const parts = keys.split('+');
  const held = (name: string) => parts.includes(name);
  const key = parts.at(-1) ?? '';
  return { key, ctrlKey: held('Ctrl'), metaKey: held('Meta'), shiftKey: held('Shift'), altKey: held('Alt') };
}

const meaning = (keys: string) => {
  const command = commandOf(press(keys));
  if (command === undefined) return '-';
  if (command.kind === 'move') return `move ${command.motion.lines},${command.motion.columns} ${command.motion.how}`;
  if (command.kind === 'page') return `page ${command.pages} ${command.how}`;
  if (command.kind === 'tab') return `tab ${command.step}`;
  return command.kind === 'type' ? `type ${command.text}` : command.kind;
};

describe('keys', () => {
  it.each([
    ['ArrowDown', 'move 1,0 go'],
    ['Shift+ArrowUp', 'move -1,0 stretch'],
    ['Home', 'move 0,-Infinity go'],
    ['Ctrl+End', 'move Infinity,Infinity go'],
    ['Ctrl+Shift+Home', 'move -Infinity,-Infinity stretch'],
    ['PageDown', 'page 1 go'],
    ['Shift+PageUp', 'page -1 stretch'],
    ['Tab', 'tab 1'],
    ['Shift+Tab', 'tab -1'],
    ['Enter', 'open'],
    ['F2', 'open'],
    ['Escape', 'escape'],
    ['Delete', 'clear'],
    ['Ctrl+a', 'select-all'],
    ['Meta+A', 'select-all'],
    ['Ctrl+d', 'fill-down'],
    ['Ctrl+Shift+D', 'series'],
    ['Ctrl+z', 'undo'],
    ['Ctrl+Shift+Z', 'redo'],
    ['Ctrl+y', 'redo'],
    ['Ctrl+f', 'find'],
    ['Alt+Enter', 'insert-row'],
    ['Alt+Shift+Enter', 'duplicate-rows'],
    ['Ctrl+Delete', 'remove-rows'],
    ['?', 'keys'],
    ['F6', 'ribbon'],
    ['F8', 'next-finding'],
    ['F9', 'clear-finding'],
    ['Shift+F8', 'previous-finding'],
    ['7', 'type 7'],
    ['Shift+Q', 'type Q'],
    ['ü', 'type ü'],
    ['Ctrl+Alt+@', 'type @'],
    ['Process', 'type '],
    // What the browser keeps: copy, cut and paste come as their own events.
    ['Ctrl+c', '-'],
    ['Ctrl+v', '-'],
    ['Ctrl+r', '-'],
    ['F5', '-'],
    ['Alt+ArrowLeft', '-'],
    ['Shift', '-'],
  ])('%s means %s', (keys, expected) => {
    expect(meaning(keys)).toBe(expected);
  });
});
