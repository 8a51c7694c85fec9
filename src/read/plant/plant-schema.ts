import { z } from 'zod';
import { causes } from '../../model/cause.js';
import { isTimeZone } from '../../model/time-zone.js';
import { weekdaysOf } from '../../words/weekdays.js';

const textOr = (message: string) => z.union([z.string(), z.number()], message).transform(String);
const text = textOr('it must be a text or a number');
const cause = z.enum(causes);
const logOdds = z.partialRecord(cause, z.number());
const shareText = 'shares are numbers from 0 to 1 that make at most 1 together';
const shares = z
  .partialRecord(cause, z.number().min(0, shareText).max(1, shareText))
  .refine((given) => Object.values(given).reduce((sum, share) => sum + share, 0) <= 1 + 1e-9, shareText);
const positive = z.number('it must be a number').positive('it must be above 0');
const clock = z
  .string('it must be a clock in quotes')
  .regex(/^([01]?\d|2[0-4]):[0-5]\d$/, 'it must be a clock such as "06:00"');

const days = textOr('it must be days such as "mon-fri"').transform((text, { addIssue }) => {
  const numbers = weekdaysOf(text);
  if (numbers === null) addIssue('it must be days such as "mon-fri", "sat, sun" or "daily"');
  return numbers ?? [];
});

const zone = z.strictObject({
  name: textOr('it must be there: a zone needs a name'),
  machine: text.optional(),
  sensor: z.string().optional(),
  wires: z.union([z.literal(2), z.literal(3), z.literal(4)], 'it must be 2, 3 or 4').optional(),
  card: text.optional(),
  heaterW: positive.optional(),
  heaterV: positive.optional(),
  toleranceClass: text.optional(),
  reading: text.optional(),
  setpoint: text.optional(),
  output: text.optional(),
});

/** The keys of plant.yaml; see the type PlantFile for what they mean. Unknown keys are told, because they are slips. */
export const plantSchema = z.strictObject({
  unit: z.enum(['degC', 'degF', 'K'], 'it must be degC, degF or K').optional(),
  timezone: z.string().refine(isTimeZone, 'it must be a time zone such as Europe/Oslo').optional(),
  dates: z.enum(['day-first', 'month-first'], 'it must be day-first or month-first').optional(),
  zones: z
    .array(zone, 'it must be a list, each zone beginning with "- name:"')
    .nullish()
    .transform((zones) => zones ?? []),
  running: z.array(z.strictObject({ machine: text, column: text })).optional(),
  alarmTexts: z.array(z.strictObject({ text: text, kind: z.string(), zone: text.optional() })).optional(),
  alarmColumns: z.array(z.strictObject({ column: text, zone: text, kind: z.string().optional() })).optional(),
  leaveOut: z.array(text).optional(),
  holdMinutes: positive.optional(),
  shifts: z.array(z.strictObject({ days, from: clock, to: clock })).optional(),
  costPerHour: z.union([z.number(), z.record(z.string(), z.number())]).optional(),
  currency: z.string().optional(),
  priors: shares.optional(),
  priorFindings: positive.optional(),
  strengths: z.record(z.string(), logOdds).optional(),
  roomDegC: z.number().optional(),
  leadLengthM: positive.optional(),
  leadGauge: text.optional(),
});
