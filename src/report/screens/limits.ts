import type { Findings, ZoneFinding } from '../../model/findings.js';
import { untoldOf } from '../sentences/untold.js';
import { reasonPhrase } from '../sentences/verdict.js';
import { html, type Html } from '../text/html.js';
import { alike, withoutNumbers } from '../text/alike.js';
import { nameHtml, zoneOnMachine } from '../text/names.js';
import { counted, minutesText } from '../text/numbers.js';
import { phraseHtml } from '../text/phrase.js';

/** Problems met while reading; what is said of several files stands once. */
export function problems({ problems: notes }: Findings): Html {
  if (notes.length === 0)
    return html`<h3>Problems met</h3>
      <p>None.</p>`;
  const groups = alike(notes, ({ code, what, todo }) => withoutNumbers(`${code} ${what} ${todo}`));
  return html`<h3>Problems met</h3>
    <ul class="problems">
      ${groups.map(([first, ...others]) => {
        const { file, line, what, todo, count } = first;
        return html`<li>
          ${file && html`<strong>${nameHtml(file)}${line !== undefined && `:${line}`}</strong> `}${what} ${todo}
          ${count !== undefined && count > 1 && !what.includes(String(count)) && html`<span class="faint">(${count} times)</span>`}
          ${
            others.length > 0 &&
            html`<details class="numbers">
              <summary>The same in ${counted(others.length, 'other place')}</summary>
              ${others.map(
                (other) =>
                  html`<span class="stacked"
                    >${nameHtml(other.file ?? '')}${other.line !== undefined && `:${other.line}`} ${other.what}</span
                  >`,
              )}
            </details>`
          }
        </li>`;
      })}
    </ul>`;
}

/** What each log does not hold, by zone; a column that is not there is not a zone that is well. */
export function missingColumns({ zones }: Findings): Html | null {
  if (zones.length === 0) return null;
  const traced = zones.filter(({ trace }) => trace !== null && trace.timeMs.length > 0);
  const lacks = (says: string, isMissing: (zone: ZoneFinding) => boolean): readonly Html[] => {
    const without = traced.filter(isMissing);
    if (without.length === 0) return [];
    const which = without.length === zones.length ? 'any zone' : counted(without.length, 'zone');
    return [html`<li>${says} for ${which}${without.length < zones.length && html`: ${names(without)}`}.</li>`];
  };
  const isEmpty = (values: readonly (number | null)[]): boolean => values.every((value) => value === null);
  const items = [
    ...lacks('No set point', ({ trace }) => isEmpty(trace!.setpointDegC)),
    ...lacks('No output', ({ trace }) => isEmpty(trace!.outputPercent)),
    ...lacks('No sign of the machine running', ({ trace }) => isEmpty(trace!.runningShare)),
    ...lacks('No sensor type', ({ sensor }) => sensor === null),
    ...lacks('No input card', ({ card }) => card === null),
  ];
  return html`<h3>What the logs do not hold</h3>
    ${
      items.length === 0
        ? html`<p>Every zone has reading, set point, output, running state, sensor type and input card.</p>`
        : html`<ul>
              ${items}
            </ul>
            <p class="note">Sensor type, wires and input card can be named in plant.yaml.</p>`
    }`;
}

/** Stretches without rows or with a record that stands still, each with its zones. */
export function gaps({ zones }: Findings): Html {
  const seen = zones.flatMap((zone) =>
    zone.symptoms
      .filter(({ detector }) => detector === 'frozen-record')
      .map(({ facts }) => ({
        zone,
        gapMinutes: facts['gapMinutes'] ?? 0,
        frozenMinutes: (facts['fileFrozenMinutes'] ?? 0) + (facts['tagFrozenMinutes'] ?? 0),
      })),
  );
  const lines = alike(
    seen,
    ({ gapMinutes, frozenMinutes }) => `${Math.round(gapMinutes)} ${Math.round(frozenMinutes)}`,
  );
  const untold =
    zones.length > 0 && zones.every(({ unable }) => unable.some(({ detector }) => detector === 'frozen-record'));
  return html`<h3>Gaps in the record</h3>
    ${
      lines.length === 0
        ? html`<p>${untold ? 'These logs do not tell: see below.' : 'None of ten minutes or more.'}</p>`
        : html`<ul>
            ${lines.map((group) => {
              const [{ gapMinutes, frozenMinutes }] = group;
              const parts = [
                gapMinutes > 0 && `rows are missing for ${minutesText(gapMinutes)}`,
                frozenMinutes > 0 && `the record stands still for ${minutesText(frozenMinutes)}`,
              ].filter((part) => part !== false);
              const which = group.length === zones.length ? 'All zones' : names(group.map(({ zone }) => zone));
              return html`<li>${which}: ${parts.join('; ')}.</li>`;
            })}
          </ul>`
    }`;
}

/** Each reason once, with the zones it holds for. */
export function cannotTell({ zones }: Findings): Html | null {
  const reasons = zones.flatMap((zone) => untoldOf(zone).map(({ what, why }) => ({ zone, text: `${what}: ${why}` })));
  if (reasons.length === 0) return null;
  const groups = [...alike(reasons, ({ text }) => withoutNumbers(text))].sort((a, b) => b.length - a.length);
  return html`<h3>What the logs could not tell</h3>
    <ul>
      ${groups.map((group) => {
        const which = group.length === zones.length ? 'all zones' : names(group.map(({ zone }) => zone));
        return html`<li>
          ${phraseHtml(reasonPhrase(`${group[0].text.charAt(0).toUpperCase()}${group[0].text.slice(1)}`))}
          <span class="faint">${group.length > 1 && 'So or nearly so for '}${which}.</span>
        </li>`;
      })}
    </ul>
    <p class="note">Missing evidence is not evidence of health: a detector that cannot tell counts for nothing.</p>`;
}

/** Named up to this many; the zones' own pages have the rest. */
const mostNamed = 6;

function names(zones: readonly ZoneFinding[]): Html {
  const shown = zones.slice(0, mostNamed).map((zone, i) => html`${i > 0 && ', '}${nameHtml(zoneOnMachine(zone))}`);
  const more = zones.length - mostNamed;
  return html`${shown}${more > 0 && ` and ${more} more`}`;
}
