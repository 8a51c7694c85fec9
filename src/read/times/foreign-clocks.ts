const outsideAscii = /[^\x00-\x7f]/;
const eastDate = /(\d{4})\s*[年년]\s*(\d{1,2})\s*[月월]\s*(\d{1,2})\s*[日号號일]?/u;
const eastClock = /(\d{1,2})\s*[時时点點시]\s*(\d{1,2})\s*[分분]\s*(?:(\d{1,2})([.,]\d+)?\s*[秒초])?/u;
const eastWeekday =
  /\s*(?:[（(][月火水木金土日一二三四五六월화수목금토일][)）]|(?:星期|周|週)[一二三四五六日天]|[月火水木金土日]曜日?|[월화수목금토일]요일)\s*/u;
/** Halves of the day in Chinese, Japanese, Korean, Greek and Turkish. */
const half = /\s*(?:(上午|午前|오전|π\.?\s?μ\.?|öö)|(下午|午後|오후|μ\.?\s?μ\.?|ös))\s*/iu;

/**
 * Dates and clocks of scripts that write words between the numbers, in the notation of the others: "2026年3月2日 下午 2时5分"
 * becomes "2026-3-2 2:05 PM".
 *
 * @returns The same text where it holds none of them. Never throws.
 */
export function plainDateText(text: string): string {
  if (!outsideAscii.test(text)) return text;
  const said = half.exec(text.normalize('NFKC'));
  const plain = text
    .normalize('NFKC')
    .replace(eastWeekday, ' ')
    .replace(half, ' ')
    .replace(eastDate, '$1-$2-$3 ')
    .replace(eastClock, (_, hour: string, minute: string, second: string | undefined, fraction = '') =>
      [hour, minute.padStart(2, '0'), ...(second === undefined ? [] : [second.padStart(2, '0') + fraction])].join(':'),
    )
    .replace(/\s+/g, ' ')
    .trim();
  return said ? `${plain} ${said[1] ? 'AM' : 'PM'}` : plain;
}
