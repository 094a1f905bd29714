/** The paths of a crew's library and of what is in it. */
export const libraryPath = (crew: string): string => `/crews/${encodeURIComponent(crew)}/types`;

export const typePath = (crew: string, type: string): string => `${libraryPath(crew)}/${encodeURIComponent(type)}`;

export const draftPath = (crew: string, draft: string): string =>
  `/crews/${encodeURIComponent(crew)}/drafts/${encodeURIComponent(draft)}`;
