import { renameSync, rmSync } from 'node:fs';

/** Puts a folder that was made beside its place into its place. Of two that make it at once the second finds it made. */
export function keepOnce(made: string, place: string): void {
  try {
    renameSync(made, place);
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code !== 'ENOTEMPTY' && code !== 'EEXIST') throw error;
    rmSync(made, { recursive: true });
  }
}
