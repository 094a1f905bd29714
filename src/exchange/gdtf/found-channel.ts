import type { Resolution } from '#engine/model/fixture-type.ts';
import type { XmlElement } from './read-xml.ts';

/** A channel's element with what its values are read by. */
export interface FoundChannel {
  readonly element: XmlElement;
  /** The part it belongs to, by its name in the type. */
  readonly part: string;
  readonly offsets: readonly number[];
  readonly resolution: Resolution;
}

/** What a function without an attribute does. Source: GDTF (DIN SPEC 15800), ChannelFunction. */
export const NO_FEATURE = 'NoFeature';

/** A function without a name is called after its attribute and its place. Source: GDTF, ChannelFunction. */
export const functionName = ({ attributes }: XmlElement, at: number): string =>
  attributes.Name ?? `${attributes.Attribute ?? NO_FEATURE} ${at + 1}`;
