import type { Check } from '../../model/check.js';
import { measure, outcome } from '../../sensors/check-parts.js';

/**
 * What tells an input from its sensor; the known signals on the input are with the sensor's own checks.
 *
 * @param isShared Other zones fail with this one: then the whole card is asked first, and a neighbour on it proves nothing.
 */
export function inputChecks(card: string | null, isShared: boolean): readonly Check[] {
  return isShared
    ? [cardSupply(card), cardSwap(' that does not fail with it, on another card')]
    : [cardSwap(onCard(card))];
}

function onCard(card: string | null): string {
  return card === null ? '' : ` on card ${card}`;
}

function cardSwap(which: string): Check {
  return {
    ...measure('card-swap', 'card', []),
    says: `Mark both, then exchange the leads of this zone and of a healthy one of the same sensor type${which}. Keep the heaters of both zones off while they are exchanged, or each loop heats by the other’s sensor.`,
    expected: [{ quantity: 'stated', condition: 'any', atDegC: null, says: 'the fault goes with the sensor' }],
    outcomes: [
      outcome('changes', 'It goes with the leads: sensor or wiring.', null),
      outcome('no-change', 'It stays with the input: card, channel or its supply.', 'input'),
    ],
  };
}

/** Supply of controls with 24 V direct current: −15 % to +20 % (IEC 61131-2, from memory). */
const supplyBand = '24 V supplies: 20.4 V to 28.8 V, without dips while zones fail; others as the card’s label says';

function cardSupply(card: string | null): Check {
  return {
    ...measure('card-supply', 'card', ['supply plus and minus of the card']),
    power: 'live',
    says: `Several zones fail together: begin at what they share. Authorised people, power on: measure the supply of ${card === null ? 'their card' : `card ${card}`}, the meter set to keep the lowest value. Locked out: look at its plug and its earth.`,
    expected: [{ quantity: 'stated', condition: 'any', atDegC: null, says: supplyBand }],
    outcomes: [
      outcome('in-band', 'The supply is good: the card itself, or its reference.', 'input'),
      outcome('low', 'Less: the supply, its fuse or its terminals: a fault of all zones on the card.', 'input'),
    ],
    source: 'IEC 61131-2 (from memory)',
  };
}

/** What tells a logger's fault from the machine's. Nothing has to be opened. */
export function recordingChecks(): readonly Check[] {
  return [
    {
      ...measure('recording-display', 'machine', []),
      power: 'live',
      says: 'Read the controller’s own display and the log’s last value for the zone at the same minute. Nothing is opened.',
      expected: [{ quantity: 'stated', condition: 'any', atDegC: null, says: 'both the same, and both moving' }],
      outcomes: [
        outcome('in-band', 'The recording is good: what it shows happens at the machine.', null),
        outcome('changes', 'They differ: name of the tag, its scaling, or the link to the controller.', 'recording'),
        outcome('no-change', 'The display moves and the log stands: link or logger has stopped.', 'recording'),
      ],
    },
  ];
}
