/** The keys, in groups, as the list of keys shows them. */
export const KEY_WORDS: readonly {
  readonly title: string;
  readonly keys: readonly (readonly [keys: string, does: string])[];
}[] = [
  {
    title: 'Go',
    keys: [
      ['Arrows', 'one cell on'],
      ['Ctrl and an arrow', 'to the edge of the sheet'],
      ['Home, End', 'first and last cell of the row'],
      ['Ctrl+Home, Ctrl+End', 'first and last cell of the sheet'],
      ['Page up, Page down', 'one window up or down'],
      ['Tab, Shift+Tab', 'next and previous cell'],
      ['Esc, then Tab', 'out of the sheet'],
      ['Ctrl+F', 'to the find field'],
      ['F8, Shift+F8', 'next and previous finding'],
      ['F9', 'shows the plan that clears the finding of this row'],
      ['F6', 'to the ribbon and back'],
      ['F4', 'opens the slots of the unit, and closes them'],
    ],
  },
  {
    title: 'Write',
    keys: [
      ['Any letter or digit', 'writes over the cell'],
      ['Enter or F2', 'opens the cell'],
      ['Enter, Tab', 'closes it and goes down, or on'],
      ['Ctrl+Enter', 'writes into every selected cell'],
      ['Esc', 'leaves the cell as it was'],
      ['Delete', 'empties the selected cells'],
      ['F7', 'locks the addresses of the selected units in your name, or unlocks them'],
    ],
  },
  {
    title: 'Select and copy',
    keys: [
      ['Shift and a key that goes', 'stretches the selection'],
      ['Ctrl+A', 'selects everything'],
      ['Ctrl+C, Ctrl+X, Ctrl+V', 'to and from any spreadsheet'],
      ['Ctrl+D', 'fills the first row down'],
      ['Ctrl+Shift+D', 'fills a series, after a look at it'],
    ],
  },
  {
    title: 'Rows and steps',
    keys: [
      ['Alt+Enter', 'new row below'],
      ['Alt+Shift+Enter', 'duplicates the selected rows'],
      ['Ctrl+Delete', 'removes the selected rows'],
      ['Ctrl+Z', 'takes back my last step'],
      ['Ctrl+Shift+Z or Ctrl+Y', 'does it again'],
      ['? or F1', 'this list'],
    ],
  },
];
