/** Who does something, by id and by the name written down with it. */
export interface Doer {
  readonly id: string;
  readonly name: string;
}
