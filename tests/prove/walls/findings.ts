/** What a proof has checked, and what did not hold. */
export interface Findings {
  check(holds: boolean, otherwise: string): void;
  readonly cases: number;
  readonly leaks: readonly string[];
}

export function newFindings(): Findings {
  const leaks: string[] = [];
  let cases = 0;
  return {
    check: (holds, otherwise) => {
      cases += 1;
      if (!holds) leaks.push(otherwise);
    },
    get cases() {
      return cases;
    },
    leaks,
  };
}
