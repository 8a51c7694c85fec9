import type { UncheckedHeat, ZoneFinding } from '../../model/findings.js';

const says: Readonly<Record<UncheckedHeat, string>> = {
  'stuck-on':
    'It may overheat, and its controller cannot switch it off: take its supply away and lock it out before all else.',
  'reading-low': 'It may be far hotter than it reads: switch its heater off and lock it out before all else.',
};

/** What comes before any measurement at a zone whose loop cannot hold its heat back; '' where it can. */
export function heatWarning({ uncheckedHeat }: Pick<ZoneFinding, 'uncheckedHeat'>): string {
  return uncheckedHeat ? says[uncheckedHeat] : '';
}
