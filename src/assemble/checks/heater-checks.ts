import type { Check, ExpectedValue } from '../../model/check.js';
import { measure, outcome } from '../../sensors/check-parts.js';
import { loopValue } from '../../sensors/measure-values.js';

/** What the nameplate of a heater says; null = not stated in plant.yaml. */
export interface HeaterPlate {
  readonly ratedW: number | null;
  readonly ratedV: number | null;
}

/**
 * Makers of tubular and cartridge heaters state watts within +5 % and −10 % at rated volts, hot, and a heating alloy
 * of nickel and chromium has up to 5 % fewer ohms cold than hot. Both common practice, figures from memory.
 */
const heaterBand = { mostWatts: 1.05, leastWatts: 0.9, coldOhm: 1 / 1.05 } as const;

/** Supply terminals, share of rated volts on either side: IEC 60038:2009, ±10 % (from memory). */
const supplyBand = 0.1;

/** A heater that has stood in damp air may leak more than a new one; below this it is dried or replaced. Common practice. */
const leastHeaterInsulationOhm = 1e6;

/** A good fuse with its holder and the tips of the meter shows less. Common practice. */
const fuseOhm = 1;

/**
 * The heater's circuit in the order of a fitter's walk: locked out first, then what needs power. A heater that does not
 * go off has a whole element, fuse and supply: it is asked what switches it, and whether a leak to earth goes round that.
 */
export function heaterChecks(plate: HeaterPlate, isStuckOn = false): readonly Check[] {
  return isStuckOn
    ? [switching(), toEarth(), current(plate), command()]
    : [element(plate), toEarth(), fuse(), switching(), current(plate), supply(plate), command()];
}

function element({ ratedW, ratedV }: HeaterPlate): Check {
  const expected: ExpectedValue =
    ratedW !== null && ratedV !== null
      ? elementValue(ratedV ** 2 / ratedW)
      : stated(
          ratedW === null
            ? 'nameplate volts × volts ÷ watts, in ohms'
            : `nameplate volts × volts ÷ ${ratedW} W, in ohms`,
        );
  return {
    ...measure('heater-resistance', 'heater', ['the two terminals of each element, one lead off']),
    says: 'Measure the ohms of the heater, each element by itself, and compare with a healthy neighbour of the same rating.',
    expected: [expected],
    outcomes: [
      outcome('in-band', 'The element is whole: go on with the fuse and what switches it.', null),
      outcome('open', 'OL: the element or its lead is broken.', 'heater'),
      outcome(
        'high',
        'Too many ohms: one of several elements in parallel is gone (half of two: twice the ohms).',
        'heater',
      ),
      outcome('low', 'Too few ohms: turns are shorted. Replace it before it blows the fuse.', 'heater'),
    ],
    source: 'R = V² ÷ P; bands common practice',
  };
}

function elementValue(ratedOhm: number): ExpectedValue {
  return {
    ...{ quantity: 'resistance', condition: 'room', atDegC: null, expectedOhm: ratedOhm },
    lowOhm: (ratedOhm / heaterBand.mostWatts) * heaterBand.coldOhm,
    highOhm: ratedOhm / heaterBand.leastWatts,
    ...{ toleranceOhm: null, toleranceDegC: null, ohmPerDegC: null, cableOhm: null },
  };
}

function toEarth(): Check {
  return {
    ...measure('heater-to-earth', 'heater', ['each terminal and the sheath or earth']),
    says: 'Insulation of the heater, both leads off, with an insulation tester of the voltage that its maker allows.',
    expected: [{ quantity: 'insulation', condition: 'room', atDegC: null, leastOhm: leastHeaterInsulationOhm }],
    outcomes: [
      outcome('in-band', 'The insulation will do.', null),
      outcome(
        'leaks',
        'Less: damp or broken down. Dry it as its maker says and measure again, or replace it.',
        'heater',
      ),
    ],
  };
}

function fuse(): Check {
  return {
    ...measure('heater-fuse', 'cabinet', ['both ends of the fuse of the zone, fuse pulled']),
    says: 'Pull the fuse of the zone, look at its rating and measure it.',
    expected: [loopValue(null, 0, fuseOhm)],
    outcomes: [
      outcome('in-band', 'The fuse is good.', null),
      outcome(
        'open',
        'OL: blown. Find out why before a new one goes in: measure the heater’s ohms and insulation.',
        'heater',
      ),
    ],
  };
}

function switching(): Check {
  return {
    ...measure('heater-switch', 'cabinet', ['in and out of the relay or contactor, heater lead off']),
    says: 'Measure across the switched side with everything dead. A solid-state relay leaks a little through its own protection; a contactor’s coil is compared with one of the same type.',
    expected: [stated('OL; a solid-state relay more than some 100 kΩ')],
    outcomes: [
      outcome('in-band', 'It lets go. Whether it also closes is seen with power, by the current.', null),
      outcome('short', 'Near 0 Ω: welded or shorted, the zone heats without being asked. Replace it.', 'heater'),
    ],
  };
}

function current({ ratedW, ratedV }: HeaterPlate): Check {
  const isKnown = ratedW !== null && ratedV !== null;
  const amps = isKnown ? ratedW / ratedV : NaN;
  const expected: ExpectedValue = isKnown
    ? {
        ...{ quantity: 'heater-current', condition: 'any', atDegC: null, expectedA: amps },
        ...{ lowA: amps * heaterBand.leastWatts, highA: amps * heaterBand.mostWatts },
      }
    : stated('nameplate watts ÷ volts, in amperes');
  return {
    ...measure('heater-current', 'cabinet', []),
    power: 'live',
    says: 'True-RMS clamp around one lead of the heater, output at 100 % long enough to read, then at 0 %. Needs power: authorised people only.',
    expected: [expected],
    outcomes: [
      outcome('in-band', 'Heater, fuse and relay do their work: look at the reading or the load.', null),
      outcome('low', 'Less by a half or a third at full volts: one of several elements is gone.', 'heater'),
      outcome('open', 'No current although the output asks: fuse, relay, lead or element is open.', 'heater'),
      outcome('no-change', 'Current with the output at 0 %: the relay or contactor does not let go.', 'heater'),
    ],
    source: 'I = P ÷ V; bands common practice',
  };
}

function supply({ ratedV }: HeaterPlate): Check {
  const expected: ExpectedValue =
    ratedV === null
      ? stated('the volts on the heater’s nameplate, ±10 %')
      : {
          ...{ quantity: 'supply-voltage', condition: 'any', atDegC: null, expectedV: ratedV },
          ...{ lowV: ratedV * (1 - supplyBand), highV: ratedV * (1 + supplyBand) },
        };
  return {
    ...measure('heater-supply', 'cabinet', ['the two outgoing terminals of the zone, output on']),
    power: 'live',
    says: 'Measure the volts that reach the heater while its output is on. Needs power: authorised people only, tester of the right category.',
    expected: [expected],
    outcomes: [
      outcome('in-band', 'The supply is there: the element or its lead is the fault.', 'heater'),
      outcome('low', 'Watts fall with the square of the volts: a phase is missing or a contact is burnt.', 'heater'),
      outcome('open', 'Nothing there: fuse, relay or supply.', 'heater'),
    ],
    source: 'IEC 60038:2009 for ±10 % (from memory)',
  };
}

function command(): Check {
  return {
    ...measure('heater-command', 'cabinet', ['plus and minus of the relay’s control side']),
    power: 'live',
    says: 'Measure the signal that the controller sends to the relay, output at 100 % and at 0 %. Needs power: authorised people only.',
    expected: [stated('the volts on the relay’s plate (often 3 to 32 V DC) at 100 %, next to 0 V at 0 %')],
    outcomes: [
      outcome('in-band', 'The controller asks: the relay or what comes after it is the fault.', 'heater'),
      outcome('open', 'No signal at 100 %: the output of the controller or its lead.', 'heater'),
      outcome('no-change', 'A signal at 0 % too: the output of the controller is stuck.', 'heater'),
    ],
  };
}

function stated(says: string): ExpectedValue {
  return { quantity: 'stated', condition: 'any', atDegC: null, says };
}
