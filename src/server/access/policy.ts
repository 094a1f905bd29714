import type { Role } from '#wire/role.ts';

/** The policy: which roles may do what in a crew, on its rigs and in its library. Whoever is not in the crew sees none of it. */
const POLICY = {
  'crew.read': ['lead', 'editor', 'reader'],
  'crew.leave': ['lead', 'editor', 'reader'],
  'crew.rename': ['lead'],
  'crew.manage-members': ['lead'],
  'crew.invite': ['lead'],
  'venue.read': ['lead', 'editor', 'reader'],
  'venue.write': ['lead', 'editor'],
  'rig.read': ['lead', 'editor', 'reader'],
  'rig.write': ['lead', 'editor'],
  'rig.create': ['lead', 'editor'],
  'rig.rename': ['lead', 'editor'],
  'rig.remove': ['lead'],
  'history.read': ['lead', 'editor', 'reader'],
  'audit.read': ['lead'],
  'archive.take-out': ['lead'],
  'revision.read': ['lead', 'editor', 'reader'],
  'revision.freeze': ['lead', 'editor'],
  'handover.read': ['lead', 'editor', 'reader'],
  'handover.offer': ['lead', 'editor'],
  'proposal.read': ['lead', 'editor', 'reader'],
  'proposal.make': ['lead', 'editor'],
  'proposal.decide': ['lead', 'editor'],
  'list-mapping.read': ['lead', 'editor', 'reader'],
  'list-mapping.write': ['lead', 'editor'],
  'type.read': ['lead', 'editor', 'reader'],
  'type.write': ['lead', 'editor'],
  'type.remove': ['lead', 'editor'],
} as const satisfies Record<string, readonly Role[]>;

export type Action = keyof typeof POLICY;

export function may(role: Role, action: Action): boolean {
  const allowed: readonly Role[] = POLICY[action];
  return allowed.includes(role);
}
