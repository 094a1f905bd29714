import { ok, type Result, refuse } from '#base/result.ts';

/** Keeps count of what is under way, so that neither one person nor all of them have too much of it at once. */
export interface Places {
  /** Takes a place for somebody; the answer gives it back. `each`: they have as many as one may; `all`: nobody gets another now. */
  take(who: string): Result<() => void, 'each' | 'all'>;
}

export function createPlaces({ each, all }: { readonly each: number; readonly all: number }): Places {
  const taken = new Map<string, number>();
  let total = 0;
  const change = (who: string, by: 1 | -1) => {
    total += by;
    const count = (taken.get(who) ?? 0) + by;
    if (count === 0) taken.delete(who);
    else taken.set(who, count);
  };
  return {
    take: (who) => {
      if ((taken.get(who) ?? 0) >= each) return refuse('each');
      if (total >= all) return refuse('all');
      change(who, 1);
      return ok(() => change(who, -1));
    },
  };
}
