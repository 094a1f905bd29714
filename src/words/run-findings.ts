import type { Finding } from '#engine/model/finding.ts';
import { RUN_RULES, type RunTrouble } from '#engine/model/run-trouble.ts';
import { MOST_LOADS } from '#engine/network/runs/measured-run.ts';
import { listed } from './listed.ts';
import { lengthWords, REACH_WORDS, sourceWords, universesWords } from './run-names.ts';

export const RUN_RULE_TITLES: Readonly<Record<RunTrouble['rule'], string>> = {
  'run-overloaded': 'Too many units on a run',
  'run-too-long': 'Run too long',
  'run-open': 'Run not terminated',
  'run-mixed': 'Run of two universes',
  'run-other-universe': 'Universe not on this run',
  'run-silent': 'Run without a universe',
  'run-source-gone': 'Run begins at what is gone',
  'run-source-beyond': 'Run begins at no output',
  'run-ring': 'Runs in a ring',
  'run-source-shared': 'Two runs from one output',
  'splitter-loose': 'Splitter on no run',
  'run-end-unsaid': 'End of the run not said',
  'run-undescribed': 'Run not described',
};

type RunFinding = Extract<Finding, RunTrouble>;

export const isRunFinding = (finding: Finding): finding is RunFinding =>
  (RUN_RULES as readonly string[]).includes(finding.rule);

/** A finding of data lines in full. `units`: the names of its units, empty for none. */
export function runSentence(finding: RunFinding, units: string): string {
  switch (finding.rule) {
    case 'run-overloaded':
      return `Run “${finding.line}” has ${finding.loads} unit loads on one segment, ${finding.loads - MOST_LOADS} more than the ${MOST_LOADS} of EIA-485 (ANSI E1.11), and beyond them ${units}. Begin another segment at a splitter`;
    case 'run-too-long':
      return `Run “${finding.line}” has ${lengthWords(finding)} of cable, more than the ${finding.reach} m that ${REACH_WORDS[finding.by]}${units === '' ? '' : `: ${units}`}. Shorten it or put a splitter into it`;
    case 'run-open':
      return `Run “${finding.line}” is not terminated at its end, ${units}. Put a terminator of 120 ohms there`;
    case 'run-end-unsaid':
      return `Nobody said whether run “${finding.line}” is terminated at its end, ${units}`;
    case 'run-mixed':
      return `Run “${finding.line}” has units of universes ${listed(finding.universes)} and can carry one: ${units}. Put the others on a run of their own`;
    case 'run-other-universe':
      return `Run “${finding.line}” carries ${universesWords(finding.carried)}, and ${units} ${finding.fixtures.length === 1 ? 'listens' : 'listen'} to ${universesWords(finding.universes)}. Change address or run`;
    case 'run-silent':
      return `No universe comes out of ${sourceWords(finding.from)}, where run “${finding.line}” begins. Say which one goes there`;
    case 'run-undescribed':
      return `Nobody has described run “${finding.line}” of ${units}. Add it under Runs`;
    case 'run-source-gone':
      return `Run “${finding.line}” begins at ${sourceWords(finding.from)}. Choose where it begins`;
    case 'run-source-beyond':
      return `Run “${finding.line}” begins at ${sourceWords(finding.from)}, which is not there. Choose another output`;
    case 'run-ring':
      return `${finding.lines.length === 1 ? 'Run' : 'Runs'} ${finding.lines.map((line) => `“${line}”`).join(', ')} ${finding.lines.length === 1 ? 'begins behind itself' : 'begin behind each other'} in a ring, so that no data comes in. Choose another beginning for one`;
    case 'run-source-shared':
      return `Runs ${listed(finding.lines.map((line) => `“${line}”`))} begin at one output, ${sourceWords(finding.from)}: a line is not forked without a splitter. Choose another output`;
    case 'splitter-loose':
      return finding.line === ''
        ? `Splitter “${finding.splitter}” is on no run. Put it on one`
        : `Splitter “${finding.splitter}” is on run “${finding.line}”, which nobody has described. Add the run, or put the splitter on another`;
  }
}
