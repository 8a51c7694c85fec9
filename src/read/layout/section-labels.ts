import { isTimeName } from '../times/time-format.js';

/** What a line between rows says of the rows below it. */
export interface SectionLabel {
  readonly of: 'machine' | 'zone';
  readonly value: string;
  /** True for words that stand before other things, too: they count only above names of columns. */
  readonly isWeak: boolean;
}

/** Words before a zone or a tag, and before a machine, in the languages that exports are met in (common practice). */
const zoneWord =
  'zone|heizzone|regelzone|tag|tag ?name|point|point ?name|channel|loop|sensor|signal|item|variable|trend|name|kanal|messstelle|regelkreis|bezeichnung|zona|strefa|sone|nom|nome|nombre|naam|nazwa|voie|canal|sonde|sonda|sensore|kanaal|зона|канал|тег|区域|温区|通道|ゾーン|チャンネル|존|채널';
const machineWord =
  'machine|maschine|anlage|line|linie|ligne|l[ií]nea|linha|linje|lijn|linka|linia|equipment|asset|press|presse|macchina|m[aá]quina|maskin|maszyna|stroj|makine|машина|линия|设备|机器|機械|ライン|설비|기계';
const said = new RegExp(
  `^[\\s#*=\\-;"]*(?:(${machineWord})|(${zoneWord}))(?:[ ._]?(?:name|no|nr|id|number|nummer))?\\.?\\s*[:=]\\s*(.+?)[\\s#*="]*$`,
  'iu',
);
const wordAlone = new RegExp(`^\\W*(?:(${machineWord})|(${zoneWord}))\\W*$`, 'iu');
const numbered = new RegExp(`^\\W*(?:((?:${machineWord})[ _.-]?\\d{1,3})|((?:${zoneWord})[ _.-]?\\d{1,3}))\\W*$`, 'iu');
/** "Name: B. Smith" is who works from now on. */
const weakWord = /^(?:sensor|signal|item|variable|trend|name|nom|nome|nombre|naam|nazwa|bezeichnung)$/iu;
/** "[Front jaw]", "=== Front jaw ===". */
const framed = /^\s*(?:\[\s*([^\]]+?)\s*\]|[=*#-]{2,}\s*([^=*#]*?\p{L}[^=*#]*?)\s*[=*#-]{2,})\s*$/u;
/** Longer texts are remarks (own choice). */
const longestValue = 60;

/** What a line says that holds a label and no row: "Zone: 3", "Tag;Front jaw", "[Rear jaw]"; null for any other. */
export function sectionLabel(cells: readonly string[]): SectionLabel | null {
  const filled = cells.map((cell) => cell.trim()).filter((cell) => cell !== '');
  if (filled.length === 0) return null;
  const found = labelIn(filled);
  if (!found || found.value.length > longestValue || isTimeName(found.value)) return null;
  return /[\p{L}\d]/u.test(found.value) && !/\d[:.]\d\d/.test(found.value) ? found : null;
}

function labelIn(filled: readonly string[]): SectionLabel | null {
  const text = filled.join(' ');
  const [, machine, zone, value] = said.exec(text) ?? [];
  if (value !== undefined) return labelled(machine, zone, value);
  const alone = filled.length === 2 ? wordAlone.exec(filled[0]!) : null;
  if (alone) return labelled(alone[1], alone[2], filled[1]!);
  const [, numberedMachine, numberedZone] = numbered.exec(text) ?? [];
  if (numberedMachine ?? numberedZone)
    return { of: numberedMachine ? 'machine' : 'zone', value: (numberedMachine ?? numberedZone)!, isWeak: false };
  const [, bracketed, ruled] = filled.length === 1 ? (framed.exec(text) ?? []) : [];
  return bracketed || ruled ? { of: 'zone', value: (bracketed ?? ruled)!, isWeak: true } : null;
}

/** A bare number is a zone's, or a machine's, only together with the word before it. */
function labelled(machine: string | undefined, zone: string | undefined, value: string): SectionLabel {
  const word = machine ?? zone!;
  const isWeak = machine === undefined && weakWord.test(word);
  return { of: machine ? 'machine' : 'zone', value: /\p{L}/u.test(value) ? value : `${word} ${value}`, isWeak };
}
