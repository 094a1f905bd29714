import { foldText } from '#engine/type/fold-text.ts';

/** What tells the types of a library apart: maker and model as people mean them, however they are spelled. */
export const typeKey = ({ maker, model }: { readonly maker: string; readonly model: string }): string =>
  `${foldText(maker)}\n${foldText(model)}`;
