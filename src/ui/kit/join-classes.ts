/** Class names in one string; what is undefined or empty is left out. */
export function joinClasses(...names: readonly (string | undefined)[]): string {
  return names.filter((name) => name !== undefined && name !== '').join(' ');
}
