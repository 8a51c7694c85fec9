import { Random } from '../random.js';
import type { Fault, FaultPlan } from './fault.js';
import { ChannelFrozen, HeaterLoss, LeadsSwapped, RecordingOnly, RelayStuck, WireShort } from './hard-faults.js';
import { CardReference, SensorDrift, SensorNoise, WireContact, WireWet } from './offsets.js';
import { CardBlips, SensorHotOpen, SensorOpen, WireFlexOpen } from './opens.js';

/** The working fault for a plan. Card faults draw from a seed in the plan, so that all zones of the card agree. */
export function makeFault(plan: FaultPlan, stepS: number, random: Random, endS: number): Fault {
  switch (plan.kind) {
    case 'sensor_open':
      return new SensorOpen(plan, stepS, random);
    case 'sensor_hot_open':
      return new SensorHotOpen(plan, stepS, random);
    case 'sensor_drift':
      return new SensorDrift(plan, stepS);
    case 'sensor_noise':
      return new SensorNoise(plan, stepS, random);
    case 'wire_flex_open':
    case 'wire_broken':
      return new WireFlexOpen(plan, stepS, random);
    case 'wire_contact':
      return new WireContact(plan, stepS, random);
    case 'wire_wet':
      return new WireWet(plan, stepS, random);
    case 'wire_short':
      return new WireShort(plan, stepS, random);
    case 'leads_swapped':
      return new LeadsSwapped(plan, stepS);
    case 'card_blips':
      return new CardBlips(plan, stepS, new Random(plan.numbers['cardSeed'] ?? 1), random, endS);
    case 'card_reference':
      return new CardReference(plan, stepS);
    case 'channel_frozen':
      return new ChannelFrozen(plan, stepS, random);
    case 'heater_dead':
    case 'heater_half':
    case 'heater_ageing':
      return new HeaterLoss(plan, stepS, random);
    case 'relay_stuck':
      return new RelayStuck(plan, stepS, random);
    case 'tag_frozen':
    case 'tag_missing':
      return new RecordingOnly(plan, stepS);
  }
}
