const KIB = 1024;
const MIB = 1024 * KIB;

/**
 * Every size and rate the server accepts, in one place. Bytes unless the name says otherwise. Whoever goes past one is
 * refused with a sentence or cut off; nothing is half-read.
 */
export const CAPS = {
  /**
   * One socket message from a client. One import is one update: 20,000 rows with 16 filled cells are about 3 MiB, so that
   * an import of 50,000 rows still fits.
   */
  syncFrame: 8 * MIB,
  /** One document update inside such a message. */
  syncUpdate: 8 * MIB - 64,
  /** Operations and deleted ranges in one update: an import of 50,000 fixtures has 240, a cell edited later one each. */
  syncUpdateParts: 100_000,
  /** What a client says it holds: some ten bytes for every session that ever edited the rig. */
  syncStateVector: 1 * MIB,
  /** Messages a second from one connection, lasting; and at once. A client of ours sends at most 50 a second. */
  syncMessagesPerSecond: 100,
  syncMessageBurst: 150,
  /** Bytes a second from one connection, lasting; and at once: two of the largest messages. */
  syncBytesPerSecond: 1 * MIB,
  syncByteBurst: 16 * MIB,
  /** Bytes that wait for a slow reader beside the document it was sent at first; more cuts it off. */
  syncSendBuffer: 4 * MIB,
  /** Bytes of updates that wait for the store in one process. */
  syncAppendQueue: 64 * MIB,
  /** Sockets of one person at once, in one process. */
  syncSocketsPerPerson: 64,
  /** Characters of an id or name inside a socket message. */
  syncText: 200,
  /** One HTTP request body of the API, and the milliseconds it has to arrive whole. Rigs and lists never come this way. */
  apiBody: 256 * KIB,
  apiBodyMs: 10_000,
  /** A `.gdtf` file sent to a library, as large as one is ever read, and the milliseconds it has to arrive whole. */
  typeFile: 128_000_000,
  typeFileMs: 180_000,
  /** Such files of one person, and of everybody, that are on their way or being read at once. */
  typeFilesPerPerson: 2,
  typeFilesAtOnce: 8,
  /** Milliseconds of processor that reading one may take, and characters that the type in it may come to. */
  typeReadMs: 30_000,
  typeContent: 32 * MIB,
  /** The archive of a crew as a file, the milliseconds it has to arrive whole, and what its parts come to, unpacked. */
  archiveFile: 256 * MIB,
  archiveFileMs: 600_000,
  archiveTotal: 1024 * MIB,
  /** Parts of such an archive, one of them, and the updates of a log in one of them with their bytes. */
  archiveParts: 60_000,
  archivePart: 200 * MIB,
  archiveLogRows: 2_000,
  archiveLogBytes: 4 * MIB,
  /** Archives that are on their way in, or out, at once: of one person, and of everybody. */
  archivesPerPerson: 1,
  archivesAtOnce: 3,
  /** Procedure calls in one request. */
  apiBatch: 20,
  /** Characters of the name of a person, crew, venue or rig. */
  nameLength: 120,
  emailLength: 254,
  leastPasswordLength: 10,
  passwordLength: 128,
  crewsPerPerson: 50,
  membersPerCrew: 500,
  openInvitationsPerCrew: 100,
  rigsPerCrew: 2000,
  revisionsPerRig: 1_000,
  /** Characters of a frozen rig: one of 50,000 fixtures has about 7 million. And the milliseconds that freezing it may take. */
  revisionText: 64 * MIB,
  revisionMs: 60_000,
  openHandoversPerCrew: 200,
  /** A handover file, as large as one is ever read, and the milliseconds it has to arrive whole and to be read or written. */
  handoverFile: 64_000_000,
  handoverFileMs: 120_000,
  handoverReadMs: 60_000,
  /** Such files of one person, and of everybody, that are on their way, being written or being read at once. */
  handoverFilesPerPerson: 2,
  handoverFilesAtOnce: 4,
  /** Edits of one proposal, characters of them as JSON (a request has room for little more), and open proposals of one show and to one house. */
  proposalEdits: 5_000,
  proposalText: 200_000,
  openProposalsPerShow: 20,
  openProposalsPerHouse: 200,
  /** Entries of the audit in one answer. */
  auditPage: 50,
  venuesPerCrew: 500,
  listMappingsPerCrew: 500,
  typesPerCrew: 10_000,
  revisionsPerType: 1_000,
  openDraftsPerCrew: 200,
  /** Rigs that are looked through for uses of a type. */
  rigsLookedThrough: 200,
  /** Characters of the key and of the remembered column mapping of a list. */
  listKeyLength: 500,
  listMappingLength: 20_000,
} as const;
