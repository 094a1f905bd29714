/** The path of a crew's audit. */
export const auditPath = (crew: string): string => `/crews/${encodeURIComponent(crew)}/audit`;
