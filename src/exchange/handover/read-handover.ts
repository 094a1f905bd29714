import { ok, type Result, refuse } from '#base/result.ts';
import type { HandoverAbout } from '#engine/handover/handover-about.ts';
import type { HandoverRefusal } from '#engine/handover/handover-refusal.ts';
import type { Sha256 } from '#engine/type/content-hash.ts';
import type { Unpack } from '../archive/archive.ts';
import { HANDOVER_LIMITS } from './limits.ts';
import { HANDOVER_FORMAT, Manifest, PARTS } from './manifest.ts';

export interface ReadHandover {
  readonly about: HandoverAbout;
  /** The frozen rig: its SHA-256 is `about.revision.hash`. */
  readonly rig: string;
}

interface Tools {
  readonly unpack: Unpack;
  readonly sha256: Sha256;
}

const NAMES: ReadonlySet<string> = new Set(Object.values(PARTS));
/** Parts without which it is no handover, as the manifest has to name them. */
const HASHED = [PARTS.rig, PARTS.findings, PARTS.patch, PARTS.readMe] as const;

/**
 * What a handover file says. It is taken only as a whole: the seal has to be that of the manifest, and every part what the manifest says.
 * Never throws for what is in it. [HO2] [HO3]
 */
export async function readHandover(
  bytes: Uint8Array,
  { unpack, sha256 }: Tools,
): Promise<Result<ReadHandover, HandoverRefusal>> {
  const wants = (name: string) => NAMES.has(name);
  const unpacked = await unpack(bytes, { limits: HANDOVER_LIMITS, nesting: 0, wants });
  if (!unpacked.ok) return unpacked;
  const { files } = unpacked.value;
  const said = textOf(files.get(PARTS.manifest));
  const seal = textOf(files.get(PARTS.seal));
  if (!files.has(PARTS.manifest)) return refuse({ code: 'not-a-handover' });
  if (!files.has(PARTS.seal)) return refuse({ code: 'part-missing', part: PARTS.seal });
  if (said === undefined || `${await sha256(said)}\n` !== seal)
    return refuse({ code: 'part-changed', part: PARTS.manifest });
  const manifest = readManifest(said);
  if (!manifest.ok) return manifest;
  const texts = new Map<string, string>();
  for (const part of HASHED) {
    if (!files.has(part)) return refuse({ code: 'part-missing', part });
    const text = textOf(files.get(part));
    if (text === undefined || (await sha256(text)) !== manifest.value.parts[part]?.sha256)
      return refuse({ code: 'part-changed', part });
    texts.set(part, text);
  }
  const { format, what, types, parts, ...about } = manifest.value;
  if (parts[PARTS.rig]?.sha256 !== about.revision.hash) return refuse({ code: 'part-changed', part: PARTS.rig });
  return ok({ about, rig: texts.get(PARTS.rig) ?? '' });
}

/** Undefined for what is no UTF-8, so that no two texts are the same for having been read badly. */
function textOf(bytes: Uint8Array | undefined): string | undefined {
  if (bytes === undefined) return undefined;
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    // Says that the bytes are no text, and nothing else.
    return undefined;
  }
}

function readManifest(said: string): Result<Manifest, HandoverRefusal> {
  const value = parseJson(said);
  const parsed = Manifest.safeParse(value);
  if (parsed.success) return ok(parsed.data);
  const format = typeof value === 'object' && value !== null && 'format' in value ? value.format : undefined;
  if (typeof format === 'number' && format > HANDOVER_FORMAT) return refuse({ code: 'newer-format', format });
  return refuse({ code: 'not-a-handover' });
}

function parseJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    // No JSON: it says nothing, and is refused.
    return undefined;
  }
}
