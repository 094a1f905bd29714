import type { FixtureType } from '#engine/model/fixture-type.ts';
import { contentHash } from '#engine/type/content-hash.ts';
import type { GdtfReport } from '#engine/type/gdtf-report.ts';
import { footprintsOfMode } from '#engine/type/slots-of.ts';
import type { TypeSummary } from '#wire/library.ts';
import { sha256 } from './sha256.ts';
import { storableJson } from './storable.ts';

/** What lists say of a revision beside its maker and model. */
export type StoredSummary = Pick<TypeSummary, 'shortName' | 'modes' | 'hazards'>;

/** A revision as it is stored: everything the store is asked for later is worked out once. */
export interface RevisionContent {
  readonly maker: string;
  readonly model: string;
  readonly guid: string;
  readonly hash: string;
  /** The type as JSON, in its own order; the hash is that of its canonical text. */
  readonly content: string;
  readonly summary: StoredSummary;
  /** The report of the file it came from, as JSON; null when it came from none. */
  readonly report: string | null;
}

export async function revisionContent(type: FixtureType, report: GdtfReport | null): Promise<RevisionContent> {
  const content = storableJson(type);
  const stored: FixtureType = JSON.parse(content);
  return {
    maker: stored.maker,
    model: stored.model,
    guid: stored.guid,
    hash: await contentHash(stored, sha256),
    content,
    summary: summaryOf(stored),
    report: report === null ? null : storableJson(report),
  };
}

export const summaryOf = (type: FixtureType): StoredSummary => ({
  shortName: type.shortName,
  modes: type.modes.map((mode) => ({
    name: mode.name,
    footprints: footprintsOfMode(type, mode),
    firmware: mode.firmware,
  })),
  hazards: type.hazards,
});
