/** Origins of transactions that are no edit of this page: what the server sent, and what was read from the copy on this device. */
export const SYNC_ORIGIN = { server: Symbol('server'), copy: Symbol('copy') } as const;
