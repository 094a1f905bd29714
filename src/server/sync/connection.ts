import type { Clock } from '#base/clock.ts';
import { unreachable } from '#base/unreachable.ts';
import { CAPS } from '#wire/caps.ts';
import { decodeClientMessage } from '#wire/sync/client-message.ts';
import { CLOSE, type CloseCode } from '#wire/sync/close-code.ts';
import { type ClientMessage, SYNC_VERSION, type SyncRole, type Where } from '#wire/sync/message.ts';
import { encodeServerMessage } from '#wire/sync/server-message.ts';
import type { Pass } from './pass.ts';
import type { Peer } from './peer.ts';
import { tokenBucket } from './token-bucket.ts';

/** What a connection asks of the rig it is on. */
export interface ConnectionHost {
  hello(connection: Connection, have: Uint8Array): void;
  /** Answers why the connection has to be closed, if so. */
  update(connection: Connection, counter: number, bytes: Uint8Array): CloseCode | undefined;
  presence(connection: Connection, where: Where | null): void;
  gone(connection: Connection): void;
}

/** Ticks of the sweep without a sign of life, or without a byte leaving, after which a connection is cut off. */
const SILENT_TICKS = 12;
const STALLED_TICKS = 6;

const PONG = encodeServerMessage({ kind: 'pong' });

/** One connection: reads its frames, keeps it to its rates, its role and its send buffer, and closes it once. */
export class Connection {
  private state: 'new' | 'greeted' | 'closed' = 'new';
  /** What of the first message may still be waiting. */
  private documentBytes = 0;
  private silent = 0;
  private stalled = 0;
  private lastBuffered = 0;
  private readonly messages;
  private readonly bytes;

  constructor(
    public pass: Pass,
    private readonly peer: Peer,
    private readonly host: ConnectionHost,
    clock: Clock,
  ) {
    this.messages = tokenBucket(clock, { perSecond: CAPS.syncMessagesPerSecond, burst: CAPS.syncMessageBurst });
    this.bytes = tokenBucket(clock, { perSecond: CAPS.syncBytesPerSecond, burst: CAPS.syncByteBurst });
  }

  get closed(): boolean {
    return this.state === 'closed';
  }

  /** Takes one frame from the peer. Never throws on what is in it. */
  receive(frame: Uint8Array): void {
    if (this.closed) return;
    this.silent = 0;
    const refusal = this.take(frame);
    if (refusal !== undefined) this.close(refusal);
  }

  private take(frame: Uint8Array): CloseCode | undefined {
    if (frame.length > CAPS.syncFrame) return CLOSE.tooLarge;
    if (!this.messages.take(1) || !this.bytes.take(frame.length)) return CLOSE.tooFast;
    const message = decodeClientMessage(frame);
    return message.ok ? this.handle(message.value) : CLOSE.malformed;
  }

  private handle(message: ClientMessage): CloseCode | undefined {
    if (message.kind === 'hello') return this.greet(message.version, message.have);
    if (message.kind !== 'ping' && this.state !== 'greeted') return CLOSE.malformed;
    switch (message.kind) {
      case 'ping':
        this.send(PONG);
        return undefined;
      case 'presence':
        this.host.presence(this, message.where);
        return undefined;
      case 'update':
        if (this.pass.role !== 'writer') return CLOSE.readerWrote;
        if (message.bytes.length > CAPS.syncUpdate) return CLOSE.tooLarge;
        return this.host.update(this, message.counter, message.bytes);
      default:
        return unreachable(message);
    }
  }

  private greet(version: number, have: Uint8Array): CloseCode | undefined {
    if (version !== SYNC_VERSION) return CLOSE.otherVersion;
    if (this.state !== 'new' || have.length > CAPS.syncStateVector) return CLOSE.malformed;
    this.state = 'greeted';
    this.host.hello(this, have);
    return undefined;
  }

  /** Sends, unless the peer reads so slowly that too much waits for it already: then it is cut off. */
  send(frame: Uint8Array): void {
    if (this.closed) return;
    const waiting = this.peer.buffered();
    if (waiting <= CAPS.syncSendBuffer) this.documentBytes = 0;
    if (waiting <= CAPS.syncSendBuffer + this.documentBytes) this.peer.send(frame);
    else this.close(CLOSE.tryAgain);
  }

  /** Sends the first message, which carries the document: a phone may take minutes for it, and is not cut off for that. */
  sendDocument(frame: Uint8Array): void {
    this.send(frame);
    this.documentBytes = frame.length;
  }

  setRole(role: SyncRole): void {
    if (role === this.pass.role) return;
    this.pass = { ...this.pass, role };
    this.send(encodeServerMessage({ kind: 'role', role }));
  }

  /** Looks whether the peer is still there and still reading; called every few seconds. */
  tick(): void {
    if (this.closed) return;
    const waiting = this.peer.buffered();
    this.silent += 1;
    this.stalled = waiting > 0 && waiting >= this.lastBuffered ? this.stalled + 1 : 0;
    this.lastBuffered = waiting;
    if (this.silent > SILENT_TICKS || this.stalled > STALLED_TICKS) this.close(CLOSE.tryAgain);
  }

  close(code: CloseCode): void {
    if (this.closed) return;
    this.left();
    this.peer.close(code);
  }

  /** The peer has gone by itself. */
  left(): void {
    if (this.closed) return;
    this.state = 'closed';
    this.host.gone(this);
  }
}
