import { setFlagsFromString } from 'node:v8';

/** Looking into more files makes so much that lives for a moment only that a small space costs time (own choice; measured: 2 and 500). */
const fewFiles = 50;

/** Six times what the engine of Node 20 takes by itself; from twice to twelve times rounds differ by more than these do (measured). */
const interruptBudget = 400_000;
/** The first engine that counts calls in place of a budget, and says so where it is given one. */
const engineWithoutBudget = 12;

/**
 * Sets the engine for one run over logs. There are documented options for both, but only on the command line of node.
 *
 * Its space for young objects is kept from growing: what the judges find lives on, so it would grow to two times 16 MB
 * while they work and never shrink (DEVELOPERS.md, "Load"). Not for many files: 500 took 40 % longer.
 *
 * It translates a function into fast code later: some two hundred are, most of them for a moment's use, and that takes
 * some tenth of the processor time of a run of two seconds (DEVELOPERS.md, "Speed").
 */
export function settleEngine(fileCount: number): void {
  if (fileCount <= fewFiles) setFlagsFromString('--semi-space-growth-factor=1');
  if (Number.parseInt(process.versions.v8, 10) < engineWithoutBudget)
    setFlagsFromString(`--interrupt-budget=${interruptBudget}`);
}
