import { refused, type Answer } from './answer.js';

/** Annealed copper at 20 °C, IEC 60028 (1.724e-8 ohm·m rounded there; 1.7241e-8 gives the wire tables). */
const copperOhmMetre = 1.7241e-8;
/** Temperature coefficient of annealed copper at 20 °C, IEC 60028, from memory. */
const copperPerDegC = 3.93e-3;

/** A conductor, by American gauge (0000 = −3, 000 = −2, 00 = −1) or by cross-section. */
export type Wire = { readonly awg: number } | { readonly mm2: number };

/** Diameter of a solid wire in mm: 0.127 mm × 92^((36 − n)/39), the definition of ASTM B258. */
export function awgDiameterMm(awg: number): number {
  return 0.127 * 92 ** ((36 - awg) / 39);
}

/** Cross-section in mm²; refused for gauges outside 0000…40 and areas outside 0.005…120 mm². */
export function wireMm2(wire: Wire): Answer<{ readonly mm2: number }> {
  if ('mm2' in wire) {
    if (wire.mm2 >= 0.005 && wire.mm2 <= 120) return { ok: true, mm2: wire.mm2 };
    return refused('no-such-wire', 'A cross-section must lie between 0.005 and 120 mm².');
  }
  if (!Number.isInteger(wire.awg) || wire.awg < -3 || wire.awg > 40) {
    return refused('no-such-wire', 'A gauge must be a whole AWG number from 0000 to 40.');
  }
  return { ok: true, mm2: (Math.PI / 4) * awgDiameterMm(wire.awg) ** 2 };
}

/**
 * Resistance of one copper conductor, there and not back: a loop of two has twice this.
 *
 * @param lengthM Length of the conductor in metres, 0 or more.
 * @param leadDegC Temperature of the copper; 20 °C unless known. The rule is linear and meant for −50…200 °C.
 * @returns ohm, or a refusal for a wire, length or temperature that cannot be. Source: IEC 60028, ASTM B258.
 */
export function copperOhm(wire: Wire, lengthM: number, leadDegC = 20): Answer<{ readonly leadOhm: number }> {
  const area = wireMm2(wire);
  if (!area.ok) return area;
  if (!Number.isFinite(lengthM) || lengthM < 0) return refused('not-a-number', 'A length must be 0 m or more.');
  if (!(leadDegC >= -50 && leadDegC <= 200)) {
    return refused(
      leadDegC > 200 ? 'above-range' : 'below-range',
      'The rule for copper is held only from −50 to 200 °C.',
    );
  }
  const ohmPerM = (copperOhmMetre / (area.mm2 * 1e-6)) * (1 + copperPerDegC * (leadDegC - 20));
  return { ok: true, leadOhm: ohmPerM * lengthM };
}

/** Finds a wire in what a person wrote: "AWG 20", "20 AWG", "20", "2/0", "0.5 mm2", "0.5 mm²"; undefined if none. */
export function parseWire(text: string): Wire | undefined {
  const plain = text.trim().toLowerCase().replace(',', '.');
  const area = /^(\d+(?:\.\d+)?)\s*(?:mm2|mm²|mm\^2|sqmm|qmm)$/.exec(plain);
  if (area) return { mm2: Number(area[1]) };
  const bare = plain.replace(/awg|gauge|ga\b|#/g, '').trim();
  const oughts = /^(?:([1-4])\/0|(0{1,4}))$/.exec(bare);
  if (oughts) return { awg: 1 - Number(oughts[1] ?? oughts[2]?.length) };
  return /^\d{1,2}$/.test(bare) ? { awg: Number(bare) } : undefined;
}
