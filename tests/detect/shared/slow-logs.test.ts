import { expect, test } from 'vitest';
import { coolDownsOf } from '../../../src/detect/shared/cold/cool-downs.js';
import { zoneState, zoneStatesOf } from '../../../src/detect/shared/readings/zone-state.js';
import { heatedPlant, sound } from '../../make/digests.js';

const columns = [
  ['all columns', {}],
  ['no set point', { hasSetpoint: false }],
  ['readings alone', { hasSetpoint: false, hasOutput: false }],
] as const;
const cases = columns.flatMap(([name, plan]) => [2, 5].map((everyMinutes) => [name, everyMinutes, plan] as const));

test.each(cases)(
  'a log with %s, read every %i minutes, tells as much as one of every minute',
  (_, everyMinutes, plan) => {
    const [quick, slow] = [1, everyMinutes].map((every) =>
      heatedPlant(sound(2), { ...plan, days: 4, everyMinutes: every }),
    );
    const states = [quick!, slow!].map((evidence) => zoneStatesOf(evidence)[0]!);
    const offAt = (place: number) => states.map((column) => column[place] === zoneState.off);
    const places = Array.from({ length: 4 * 24 * 60 - 60 }, (_, i) => i).filter((i) => i % everyMinutes === 0);
    const unlike = places.filter((place) => offAt(place)[0] !== offAt(place)[1]);
    expect(unlike.length / places.length).toBeLessThan(0.01);
    const taus = [quick!, slow!].map((evidence) => coolDownsOf(evidence)[0]!.map(({ tauMinutes }) => tauMinutes));
    expect(taus[1]!.length).toBe(taus[0]!.length);
    taus[1]!.forEach((tau, i) => expect(Math.abs(tau / taus[0]![i]! - 1)).toBeLessThan(0.1));
  },
);
