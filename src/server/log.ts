/** Writes what happens in the process, one line each: time, weight, sentence, then `key=value`. */
export interface Log {
  note(sentence: string, facts?: Facts): void;
  trouble(sentence: string, error: Error, facts?: Facts): void;
}

type Facts = Readonly<Record<string, string | number>>;

export function createLog(write: (line: string) => void, now: () => number): Log {
  const line = (weight: string, sentence: string, facts: Facts) => {
    const said = Object.entries(facts).map(([key, value]) => ` ${key}=${JSON.stringify(value)}`);
    write(`${new Date(now()).toISOString()} ${weight} ${sentence}${said.join('')}`);
  };
  return {
    note: (sentence, facts = {}) => line('note', sentence, facts),
    trouble: (sentence, error, facts = {}) => {
      line('trouble', sentence, { ...facts, error: error.message });
      if (error.stack) write(error.stack);
    },
  };
}
