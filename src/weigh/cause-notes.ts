import type { Cause } from '../model/cause.js';

/** What the trade knows of a cause before any log is read, and what no log can tell of it. Common practice. */
export interface CauseNote {
  /** Why its share before any evidence is what it is. */
  readonly priorNote: string;
  /** What stays open whatever the log shows. */
  readonly cannotTell: string;
}

export const causeNotes: Readonly<Record<Cause, CauseNote>> = {
  sensor: {
    priorNote: 'Elements in hot, moving tools wear out; the most frequent single cause.',
    cannotTell:
      'A clean open without history may be the element or the wire beside it. A drift that began before the log, on a machine that never cools, stays unseen.',
  },
  wiring: {
    priorNote: 'Flexing cables, plugs and terminals that see water and vibration fail almost as often as elements.',
    cannotTell:
      'Where in the run it lies: plug, terminal or cable. A contact of a fraction of an ohm in a quick loop is pulled back before the next sample.',
  },
  input: {
    priorNote: 'Cards and channels seldom fail alone; a supply or a reference takes its neighbours along.',
    cannotTell:
      'Which zones share a card, unless the plant file or the faults themselves say it. One frozen channel on a machine that stands cold looks like a cold machine.',
  },
  heater: {
    priorNote: 'Elements, fuses and contactors fail as a matter of course.',
    cannotTell:
      'Element, fuse, contactor or supply: the log sees only that heat is missing. Without an output column a weak heater looks like a changed recipe.',
  },
  recording: {
    priorNote: 'Loggers lose rows and hold values more often than they do it to one zone alone.',
    cannotTell: 'What the process did meanwhile.',
  },
  none: {
    priorNote: 'Most zones have no fault in most weeks.',
    cannotTell: 'A fault smaller than the scatter of the log, or one that the loop hides.',
  },
};
