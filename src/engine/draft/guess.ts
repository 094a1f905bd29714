import { CELL_LIMIT } from '../model/field.ts';
import { cellText } from './cell-text.ts';

/** Stands behind an attribute that was guessed, until somebody confirms it: `Pan ?`. It is seen by everybody in the draft. */
const MARK = ' ?';

export const isGuess = (attribute: string): boolean => attribute.endsWith(MARK);

/** An attribute as a guess; one that is empty has nothing to confirm. */
export const asGuess = (attribute: string): string =>
  attribute === '' ? '' : cellText(attribute, CELL_LIMIT - MARK.length) + MARK;

/** The attribute itself, confirmed or not. */
export const withoutGuess = (attribute: string): string =>
  isGuess(attribute) ? attribute.slice(0, -MARK.length) : attribute;
