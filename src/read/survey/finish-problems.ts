import type { ProblemNote } from '../../model/problem.js';
import type { Attached } from '../columns/draft-zone.js';
import type { UnitFinding } from '../columns/unit-guess.js';
import type { DraftFile } from './drafted-file.js';

export const unitWords = { degC: '°C', degF: '°F', K: 'K' } as const;

export function unknownQuantity(draft: DraftFile, columns: readonly Attached[]): ProblemNote {
  const names = columns.map(({ series }) => `"${series.name}"`).join(', ');
  return {
    code: 'unknown-layout',
    file: draft.name,
    what: `No name says which columns are temperatures, and the numbers of ${names} are too unlike to be of one kind.`,
    todo: 'Give the names of the columns with --names, or say in plant.yaml which ones are readings; until then no fault is claimed.',
  };
}

export function takingTurns(draft: DraftFile): ProblemNote {
  return {
    code: 'ambiguous-layout' as const,
    file: draft.name,
    what: 'The rows seem to be of two machines or zones that take turns: every other value goes on from the one before the last. No column tells them apart, so they are mixed here.',
    todo: 'Export each machine into a file of its own, or with a column that names the machine; until then no fault is claimed.',
  };
}

export function unitProblem(draft: DraftFile, { unit, why }: UnitFinding): ProblemNote {
  return {
    ...{
      code: 'ambiguous-unit',
      file: draft.name,
      what: `The unit is not certain: ${why}; ${unitWords[unit]} is taken.`,
    },
    todo: `If that is wrong, say "unit: ${unit === 'degF' ? 'degC' : 'degF'}" in plant.yaml or use the option --unit.`,
  };
}
