/** Slots counted through all universes, both ends counted in. */
export interface Span {
  readonly first: number;
  readonly last: number;
}

/** Spans that are apart. */
export class TakenSpans {
  readonly #spans: Span[];

  constructor(spans: readonly Span[]) {
    this.#spans = [...spans].sort((a, b) => a.first - b.first);
  }

  /** Takes all of these, or none when one of them meets what is taken. */
  add(spans: readonly Span[]): boolean {
    if (spans.some((span) => this.#meets(span))) return false;
    for (const span of spans) this.#spans.splice(this.#placeOf(span), 0, span);
    return true;
  }

  #meets(span: Span): boolean {
    const at = this.#placeOf(span);
    const before = this.#spans[at - 1];
    const after = this.#spans[at];
    return (before !== undefined && before.last >= span.first) || (after !== undefined && after.first <= span.last);
  }

  /** How many begin before it. */
  #placeOf({ first }: Span): number {
    let low = 0;
    let high = this.#spans.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((this.#spans[middle] as Span).first < first) low = middle + 1;
      else high = middle;
    }
    return low;
  }
}
