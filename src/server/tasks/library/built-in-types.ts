import type { FixtureType } from '#engine/model/fixture-type.ts';
import { contentHash } from '#engine/type/content-hash.ts';
import { GENERIC_TYPES } from '#engine/type/generic-types.ts';
import type { TypeSummary } from '#wire/library.ts';
import { summaryOf } from './revision-content.ts';
import { sha256 } from './sha256.ts';

/** A type that comes with the program: in every library, never changed by anybody. */
export interface BuiltInType {
  readonly summary: TypeSummary;
  readonly type: FixtureType;
}

const PREFIX = 'built-in-';
/** The day they were first shipped. */
const SHIPPED = '2026-11-25T00:00:00.000Z';

let all: Promise<readonly BuiltInType[]> | undefined;

/** All of them, worked out once. */
export function builtInTypes(): Promise<readonly BuiltInType[]> {
  all ??= Promise.all(GENERIC_TYPES.map(builtIn));
  return all;
}

export async function findBuiltIn(typeId: string): Promise<BuiltInType | undefined> {
  return isBuiltIn(typeId) ? (await builtInTypes()).find(({ summary }) => summary.id === typeId) : undefined;
}

export const isBuiltIn = (typeId: string): boolean => typeId.startsWith(PREFIX);

async function builtIn(type: FixtureType, at: number): Promise<BuiltInType> {
  const hash = await contentHash(type, sha256);
  const { maker, model } = type;
  const about = { revision: 0, hash, origin: 'built-in', changedAt: SHIPPED } as const;
  return { type, summary: { id: `${PREFIX}${at + 1}`, maker, model, ...summaryOf(type), ...about } };
}
