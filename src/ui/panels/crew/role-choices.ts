import { Role } from '#wire/role.ts';
import { ROLE_WORDS } from '#words/screens.ts';

/** The roles by their names alone. */
export const ROLE_NAMES = Role.options.map((role) => ({ value: role, label: ROLE_WORDS[role].name }));

/** The roles to choose from, each with what it may do. */
export const ROLE_CHOICES = Role.options.map((role) => ({
  value: role,
  label: `${ROLE_WORDS[role].name}: ${ROLE_WORDS[role].may}`,
}));
