import { RememberMapping } from '#wire/list-mappings.ts';
import { rememberMapping as remember } from '../../tasks/remember-mapping.ts';
import { inCrew } from '../procedures.ts';

/** Keeps how a list of this layout is read, for everybody in the crew. */
export const rememberMapping = inCrew('list-mapping.write')
  .input(RememberMapping)
  .mutation(({ ctx, input }): Promise<null> => remember(ctx, input));
