import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { AlarmSpan } from '../../src/model/alarm.js';
import { AlarmList } from '../../src/model/alarm-list.js';

const texts = ['sensor break', 'too cold', 'jam'];
const span = ([startMs, lastsMs, text, zone]: readonly [number, number, number, number]): AlarmSpan => ({
  startMs,
  endMs: lastsMs === 0 ? NaN : startMs + lastsMs,
  acknowledgedMs: NaN,
  source: `Zone ${zone}`,
  message: texts[text]!,
  kind: text === 0 ? 'sensor-open' : 'other',
  zone,
  machine: 'M1',
  priority: null,
});
const byStart = (a: AlarmSpan, b: AlarmSpan) => a.startMs - b.startMs;
const spans = fc
  .array(fc.tuple(fc.nat(50), fc.nat(9), fc.nat(2), fc.nat(3)), { maxLength: 30 })
  .map((drawn) => drawn.map(span).sort(byStart));

test('gives back the alarms it was made of, in their order', () => {
  fc.assert(
    fc.property(spans, (given) => {
      expect([...AlarmList.of(given)]).toEqual(given);
    }),
  );
});

test('picks what the same question picks from an array', () => {
  fc.assert(
    fc.property(spans, fc.nat(3), (given, wanted) => {
      const list = AlarmList.of(given);
      const late = (startMs: number) => startMs >= 25;
      expect([...list.about(({ zone }) => zone === wanted)]).toEqual(given.filter(({ zone }) => zone === wanted));
      expect([...list.where((i) => late(list.columns.startMs[i]!))]).toEqual(
        given.filter(({ startMs }) => late(startMs)),
      );
    }),
  );
});

test('moved alarms stand in order of start again, and the list they came from is unchanged', () => {
  fc.assert(
    fc.property(spans, fc.integer({ min: -40, max: 40 }), (given, shiftMs) => {
      const list = AlarmList.of(given);
      const moved = given.map((alarm) => {
        const byMs = alarm.zone === 1 ? shiftMs : 0;
        return { ...alarm, startMs: alarm.startMs + byMs, endMs: alarm.endMs + byMs };
      });
      expect([...list.laterBy(({ zone }) => (zone === 1 ? shiftMs : 0))]).toEqual(moved.sort(byStart));
      expect([...list]).toEqual(given);
    }),
  );
});

test('groups hold each alarm with a key once, keys in the order in which they come', () => {
  fc.assert(
    fc.property(spans, (given) => {
      const keyOf = ({ zone, startMs }: AlarmSpan) => (zone === 3 ? null : `${zone} ${startMs % 2}`);
      const list = AlarmList.of(given);
      const expected = new Map<string, AlarmSpan[]>();
      for (const alarm of given) {
        const key = keyOf(alarm);
        if (key !== null) expected.set(key, [...(expected.get(key) ?? []), alarm]);
      }
      const groups = [...list.groupBy((place) => keyOf(list.at(place)))].map(([key, group]) => [key, [...group]]);
      expect(groups).toEqual([...expected]);
    }),
  );
});
