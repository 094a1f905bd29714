import type { ViewKeeper } from '../grid/sheet.ts';

const PREFIX = 'rigledger-view-1:';

/** Keeps a person’s columns in this browser. Where it keeps nothing, the columns are as usual: nothing else depends on them. */
export function keepOnDevice(name: string): ViewKeeper {
  return {
    load() {
      try {
        return JSON.parse(localStorage.getItem(PREFIX + name) ?? 'null');
      } catch {
        // Storage is switched off, or somebody else wrote there: as good as not kept.
        return null;
      }
    },
    save(kept) {
      try {
        localStorage.setItem(PREFIX + name, JSON.stringify(kept));
      } catch {
        // Storage is switched off or full: the columns stay as they are while this page is open.
      }
    },
  };
}
