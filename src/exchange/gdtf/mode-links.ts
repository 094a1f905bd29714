import { childrenOf, elementAt, textOf } from './elements.ts';
import { type FoundChannel, functionName } from './found-channel.ts';

/** A function that a link of a mode points at. */
export interface FunctionLink {
  readonly channel: FoundChannel;
  /** The attribute of its logical channel. */
  readonly attribute: string;
  readonly name: string;
}

/**
 * What the links of one mode point at: `Geometry_Attribute` for a channel, `Geometry_Attribute.Attribute.Function` for a
 * function. They are looked up whole, since names may hold the signs that join them.
 */
export class ModeLinks {
  private readonly channels = new Map<string, FoundChannel>();
  private functions: Map<string, FunctionLink> | undefined;

  constructor(private readonly found: readonly FoundChannel[]) {
    for (const each of found) if (!this.channels.has(nameOf(each))) this.channels.set(nameOf(each), each);
  }

  channelOf(link: string): FoundChannel | undefined {
    return this.channels.get(link);
  }

  functionOf(link: string): FunctionLink | undefined {
    this.functions ??= functionsOf(this.found);
    return this.functions.get(link);
  }

  /** Whether it is the first function of its channel, which needs no link to be the one it starts in. */
  isFirst({ channel, attribute, name }: FunctionLink): boolean {
    const use = elementAt(channel.element, 'LogicalChannel');
    const first = use && elementAt(use, 'ChannelFunction');
    return first !== undefined && textOf(use ?? first, 'Attribute') === attribute && functionName(first, 0) === name;
  }
}

function nameOf({ element }: FoundChannel): string {
  const use = elementAt(element, 'LogicalChannel');
  return `${textOf(element, 'Geometry')}_${use === undefined ? '' : textOf(use, 'Attribute')}`;
}

function functionsOf(found: readonly FoundChannel[]): Map<string, FunctionLink> {
  const functions = new Map<string, FunctionLink>();
  for (const channel of found) {
    for (const use of childrenOf(channel.element, 'LogicalChannel')) {
      const attribute = textOf(use, 'Attribute');
      for (const [at, element] of childrenOf(use, 'ChannelFunction').entries()) {
        const name = functionName(element, at);
        const link = `${nameOf(channel)}.${attribute}.${name}`;
        if (!functions.has(link)) functions.set(link, { channel, attribute, name });
      }
    }
  }
  return functions;
}
