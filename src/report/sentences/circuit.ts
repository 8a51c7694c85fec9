import { secondsText, shortNumber } from '../text/numbers.js';
import { phrase, type Phrase } from '../text/phrase.js';
import { factOf, timesText, type Family } from './family.js';

const runningNames = ['runningPerHour', 'opensPerRunningHour', 'opensPerHourRunning', 'runningOpensPerH'];
const stoppedNames = ['stoppedPerHour', 'opensPerStoppedHour', 'opensPerHourStopped', 'stoppedOpensPerH'];
const longestNames = ['longestSeconds', 'longestS', 'longestMs', 'durationMs', 'lastedMs'];

/** Opens counted against exposure: moving against standing, hot against cold, first days against last. */
export const openRates: Family = {
  id: 'open-rates',
  has: (id) => /(^|-)opens?-/.test(id) && /(running|moving|stopped|hot|cold|grow|more|burst|rate|days|rising)/.test(id),
  weight: 90,
  say: (symptom) => {
    const running = factOf(symptom, ...runningNames);
    const stopped = factOf(symptom, ...stoppedNames);
    if (running >= 0 && stopped >= 0) {
      const says = phrase`it opens ${shortNumber(running)} times an hour while the machine runs and ${shortNumber(stopped)} while it stands`;
      return { says, used: [...runningNames, ...stoppedNames] };
    }
    return { says: [ratesText(symptom.detector)], used: [] };
  },
};

function ratesText(id: string): string {
  if (/(hot|cold)/.test(id)) return 'it opens when hot and closes when cold';
  if (/(grow|more|days|rising)/.test(id)) return 'it opens more often from day to day';
  if (/burst/.test(id)) return 'the opens come in bursts';
  return 'it opens more while the machine moves than while it stands';
}

/** The circuit is open, shorted, or the log holds a word or code in place of a temperature. */
export const circuit: Family = {
  id: 'circuit',
  has: (id) => /(^|-)(opens?|full-scale|above-scale|below-scale|code|short|text|quality|restart)(-|$)/.test(id),
  weight: 80,
  say: (symptom) => {
    const longest = factOf(symptom, 'longestSeconds', 'longestS');
    const longestMs = factOf(symptom, 'longestMs', 'durationMs', 'lastedMs');
    const seconds = Number.isNaN(longest) ? longestMs / 1000 : longest;
    const long: Phrase = Number.isNaN(seconds)
      ? []
      : [symptom.count === 1 ? `, for ${secondsText(seconds)}` : `, the longest for ${secondsText(seconds)}`];
    const says = phrase`${circuitText(symptom.detector)} ${timesText(symptom.count)}${long}`;
    return { says, used: longestNames };
  },
};

function circuitText(id: string): string {
  if (/short|below/.test(id)) return 'the reading goes to the bottom of its scale';
  if (/restart/.test(id)) return 'the reading is zero while the controller restarts';
  if (/quality/.test(id)) return 'the log marks the reading as bad';
  if (/full-scale|above/.test(id)) return 'the reading goes to the end of its scale';
  if (/code|text/.test(id)) return 'the log holds a code in place of a temperature';
  return 'the sensor circuit opens';
}
