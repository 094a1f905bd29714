/** True for the error of a unique rule that was broken: Prisma's P2002, on either store. Compared by code, as there may be two classes. */
export function isTaken(error: unknown): boolean {
  return typeof error === 'object' && error !== null && 'code' in error && error.code === 'P2002';
}
