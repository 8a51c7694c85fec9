import { readFileSync } from 'node:fs';
import type { Evidence, Episode } from '../../src/model/detector.js';
import { noisyStretchesOf } from '../../src/detect/shared/readings/noisy-stretches.js';
import { gather } from '../../src/gather.js';

/**
 * The fault benchmark of de Bruijn, Nguyen, Bucur, Tei, SENSORNETS 2016, pp. 185-195: one clean series with faults put
 * in, and a number per row that says which (the source's readme.txt).
 */
export const labels = { random: 1, malfunction: 2, bias: 4, drift: 8, polydrift: 16 } as const;
export type Label = keyof typeof labels;

/** What each label really is, counted on the files: `drift` is a block with a large offset, `polydrift` is the ramp. */
export const meaning: Readonly<Record<Label, string>> = {
  random: 'spikes of one to three rows',
  malfunction: 'a block of extra noise',
  bias: 'a block with an offset of some degrees',
  drift: 'a block with a large offset',
  polydrift: 'a ramp from zero, back at once',
};

export interface Block {
  readonly label: Label;
  readonly startMs: number;
  readonly endMs: number;
  readonly rows: number;
  /** Time of the first row behind it; NaN at the end of the file. */
  readonly nextMs: number;
  /** Size of the jumps into it and out of it, °C; NaN where a hole lies between. */
  readonly jumpInDegC: number;
  readonly jumpOutDegC: number;
}

/** The sensors sent every five minutes; over a longer time than this a jump may be weather. */
const holeMs = 3.5 * 300_000;
/** A smaller jump between two rows may be weather, too: the least that impossible-step takes for one. */
const clearJumpDegC = 8;
/** Noise of fewer rows is a guess: the watcher of scatter takes thirty. */
const fewestNoisyRows = 30;
/** A spike stays out for at most so many rows. */
const longestSpike = 3;

/**
 * Whether the file itself can show the block for what it is: a block between two holes has no jump, a ramp only its
 * way back, and of extra noise some hours.
 */
export function isVisible({ label, rows, jumpInDegC, jumpOutDegC }: Block): boolean {
  const isIn = Math.abs(jumpInDegC) >= clearJumpDegC;
  const isOut = Math.abs(jumpOutDegC) >= clearJumpDegC;
  if (label === 'random') return isIn && isOut && rows <= longestSpike;
  if (label === 'malfunction') return rows >= fewestNoisyRows;
  return isIn || isOut;
}

/** Labelled rows in one piece, in time order. */
export function blocksIn(path: string): Block[] {
  const rows = readFileSync(path, 'utf8')
    .trim()
    .split('\n')
    .slice(1)
    .map((line) => line.replaceAll("'", '').split(','))
    .map(([time, , label, degC]) => ({
      timeMs: Date.parse(`${time}Z`),
      label: Number(label),
      degC: Number(degC),
    }));
  const jumpTo = (row: number) => {
    const [before, after] = [rows[row - 1], rows[row]];
    return before && after && after.timeMs - before.timeMs <= holeMs ? after.degC - before.degC : NaN;
  };
  const blocks: Block[] = [];
  for (let from = 0; from < rows.length;) {
    let to = from + 1;
    while (to < rows.length && rows[to]!.label === rows[from]!.label) to++;
    const label = (Object.keys(labels) as Label[]).find((name) => labels[name] === rows[from]!.label);
    if (label) {
      const nextMs = rows[to]?.timeMs ?? NaN;
      blocks.push({
        ...{ label, startMs: rows[from]!.timeMs, endMs: rows[to - 1]!.timeMs, rows: to - from, nextMs },
        ...{ jumpInDegC: jumpTo(from), jumpOutDegC: jumpTo(to) },
      });
    }
    from = to;
  }
  return blocks;
}

export interface Count {
  readonly blocks: number;
  /** Blocks that the file itself can show for what they are. */
  readonly visible: number;
  /** Blocks found as what they are. */
  readonly found: number;
  /** Visible blocks found. */
  readonly foundVisible: number;
}

/**
 * Counts what the watchers saw in the labelled blocks of one file.
 *
 * @returns Also the strays: episodes that touch no labelled row nor the row behind it.
 */
export async function countBlocks(path: string): Promise<{ byLabel: Map<Label, Count>; strays: number }> {
  const blocks = blocksIn(path);
  const { evidence } = await gather([path], {});
  const touches = (episode: Span, { startMs, endMs, nextMs }: Block) =>
    episode.endMs >= startMs && episode.startMs <= (Number.isNaN(nextMs) ? endMs : nextMs);
  const seen: readonly Span[] = [...jumps(evidence), ...spikes(evidence), ...loudHours(evidence)];
  const strays = seen.filter((episode) => !blocks.some((block) => touches(episode, block))).length;
  const byLabel = new Map<Label, Count>();
  for (const label of new Set(blocks.map((block) => block.label))) {
    const own = blocks.filter((block) => block.label === label);
    const found = own.filter((block) => signsOf(label, evidence).some((episode) => touches(episode, block)));
    byLabel.set(label, {
      blocks: own.length,
      visible: own.filter(isVisible).length,
      found: found.length,
      foundVisible: found.filter(isVisible).length,
    });
  }
  return { byLabel, strays };
}

/** What says what the label means: noise shows as loud hours; of a ramp its end shows, as a jump back. */
function signsOf(label: Label, evidence: Evidence): readonly Span[] {
  if (label === 'malfunction') return loudHours(evidence);
  return label === 'random' ? spikes(evidence) : jumps(evidence);
}

/** Hours of the judge of scatter; a quiet file has none. */
function loudHours(evidence: Evidence): readonly Span[] {
  return noisyStretchesOf(evidence)[0] ?? [];
}

type Span = Pick<Episode, 'startMs' | 'endMs'>;

const episodesOf = ({ episodes }: Evidence, kind: string): readonly Episode[] => episodes.get(kind)?.[0] ?? [];

function jumps(evidence: Evidence): readonly Episode[] {
  return [...episodesOf(evidence, 'settled-step'), ...episodesOf(evidence, 'impossible-step')];
}

function spikes(evidence: Evidence): readonly Episode[] {
  return episodesOf(evidence, 'spike');
}
