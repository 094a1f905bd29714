import * as Y from 'yjs';
import { ok, type Result, refuse } from '#base/result.ts';
import { CAPS } from '#wire/caps.ts';

/** How far the changes of each editing client reach: client id to the number of its operations. */
export type Reach = Map<number, number>;

type Struct = ReturnType<typeof Y.decodeUpdate>['structs'][number];

/**
 * Says how far a document update reaches, before it is applied to anything. `malformed` when it cannot be decoded or would break the
 * document library; `gap` when it builds on operations that `known` does not hold, so that applying it now would do nothing.
 * `bytes` must sit in a buffer of its own (see `readBytes` of the wire): the decoder trusts declared lengths.
 */
export function checkUpdate(bytes: Uint8Array, known: ReadonlyMap<number, number>): Result<Reach, 'malformed' | 'gap'> {
  const decoded = decode(bytes);
  if (decoded === undefined) return refuse('malformed');
  const reach = reachOf(decoded.structs, known);
  if (!reach.ok) return reach;
  const reached = (client: number) => reach.value.get(client) ?? known.get(client) ?? 0;
  for (const struct of decoded.structs) {
    const trouble = troubleWith(struct, reached);
    if (trouble) return refuse(trouble);
  }
  for (const [client, ranges] of decoded.ds.clients)
    for (const { clock, len } of ranges) if (clock + len > reached(client)) return refuse('gap');
  return reach;
}

function reachOf(structs: readonly Struct[], known: ReadonlyMap<number, number>): Result<Reach, 'malformed' | 'gap'> {
  const reach: Reach = new Map();
  for (const struct of structs) {
    if (struct instanceof Y.Skip) continue;
    const { client, clock } = struct.id;
    const reached = reach.get(client) ?? known.get(client) ?? 0;
    const end = clock + struct.length;
    if (struct.length < 1 || !Number.isSafeInteger(end)) return refuse('malformed');
    if (clock > reached) return refuse('gap');
    reach.set(client, Math.max(end, reached));
  }
  return ok(reach);
}

function troubleWith(struct: Struct, reached: (client: number) => number): 'malformed' | 'gap' | undefined {
  for (const { client, clock } of foundations(struct)) {
    if (client === struct.id.client && clock >= struct.id.clock) return 'malformed';
    if (clock >= reached(client)) return 'gap';
  }
  return undefined;
}

function decode(bytes: Uint8Array): ReturnType<typeof Y.decodeUpdate> | undefined {
  try {
    return Y.decodeUpdateV2(bytes, LimitedDecoder);
  } catch {
    // Whatever the decoder stumbled over, these bytes are no update.
    return undefined;
  }
}

/** Parts that any update may have, however small they are. */
const FEW_PARTS = 20_000;
/** Bytes that a part takes on average where there are many; the smallest one takes two. */
const BYTES_PER_PART = 8;

/**
 * Reads the usual encoding (V1), and gives up early on updates of too many parts, or of many that hold next to nothing: two bytes can
 * make an object of a hundred.
 */
class LimitedDecoder extends Y.UpdateDecoderV1 {
  private parts = 0;

  override readInfo(): number {
    this.count();
    return super.readInfo();
  }

  override readDsClock(): number {
    this.count();
    return super.readDsClock();
  }

  private count(): void {
    this.parts += 1;
    const most = Math.min(CAPS.syncUpdateParts, FEW_PARTS + this.restDecoder.pos / BYTES_PER_PART);
    if (this.parts > most) throw new Error('too many parts');
  }
}

/** The operations an operation is placed by. */
function foundations(struct: Struct): Y.ID[] {
  if (!(struct instanceof Y.Item)) return [];
  const parent = struct.parent instanceof Y.ID ? struct.parent : null;
  return [struct.origin, struct.rightOrigin, parent].filter((id) => id !== null);
}
