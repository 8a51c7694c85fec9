import type { Check } from '../../model/check.js';
import { measure, outcome } from '../../sensors/check-parts.js';

/** The swap that tells an input from its sensor; the known signals on the input are with the sensor's own checks. */
export function inputChecks(card: string | null): readonly Check[] {
  return [
    {
      ...measure('card-swap', 'card', []),
      says: `Mark both, then exchange the leads of this zone and of a healthy one of the same sensor type${card === null ? '' : ` on card ${card}`}. Keep the heaters of both zones off while they are exchanged, or each loop heats by the other’s sensor.`,
      expected: [{ quantity: 'stated', condition: 'any', atDegC: null, says: 'the fault goes with the sensor' }],
      outcomes: [
        outcome('changes', 'It goes with the leads: sensor or wiring.', null),
        outcome('no-change', 'It stays with the input: card, channel or its supply.', 'input'),
      ],
    },
  ];
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
