import { library } from '../../../cells/catalogue.ts';
import { computeSheet } from '../../../src/engine/compute.ts';
import type { Dice } from './oracle.ts';
import { movesWith, type ProofSample } from './proof-oracle.ts';

export interface ProofTally {
  lines: number;
  parts: number;
  /** Said of a part what is a plan or a model's. */
  unsafe: string[];
  /** A part by all that moves it, and not said to be one. */
  timid: string[];
}

const told = ({ file }: ProofSample): string =>
  [
    `rule ${file.rule}`,
    ...file.cells.map(
      ({ id, role, basis = '', kind = '', entry = '', inputs, measured }) =>
        `${id} ${role} ${kind}${basis}: ${entry}${JSON.stringify(inputs) ?? ''} ${measured?.entry ?? ''}`,
    ),
  ].join('\n   ');

export function huntProof(sample: ProofSample, dice: Dice, tally: ProofTally): void {
  const results = computeSheet(sample.file, library);
  for (const [name, at] of sample.figures) {
    const [line = '', output = 'value'] = name.split('.');
    const state = results.byName(line)?.outputs[output]?.check.asNew.state;
    if (state === undefined || state === 'waiting' || state === 'entry in error') continue;
    tally.lines++;
    const isPart = /proven|out of limits/.test(state);
    if (isPart) tally.parts++;
    const moved = movesWith(sample, at, dice, isPart ? 60 : 200);
    const isOpen = moved.has('planned') || moved.has('model');
    // What nothing moves at all, `bore - bore`, is as certain as can be.
    const isOne = !isOpen && (moved.has('measured') || (isPart && moved.size === 0));
    if (isPart && !isOne)
      tally.unsafe.push(`${name} ${state}: moves with ${[...moved].join(', ')}\n   ${told(sample)}`);
    if (!isPart && isOne) tally.timid.push(`${name} ${state}\n   ${told(sample)}`);
  }
}
