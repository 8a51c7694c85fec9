/** Ways to set off text; the words carry the meaning, colour only helps to find them. */
export interface Colours {
  bold(text: string): string;
  bad(text: string): string;
  warn(text: string): string;
  good(text: string): string;
  faint(text: string): string;
}

/** What the choice depends on, so that a test can give it. */
export interface Terminal {
  readonly isTerminal: boolean;
  readonly columns: number;
  readonly env: Readonly<Record<string, string | undefined>>;
}

/** ECMA-48 select graphic rendition: a code on, and the code that ends it. */
const codes = { bold: [1, 22], bad: [31, 39], warn: [33, 39], good: [32, 39], faint: [2, 22] } as const;

/** Colour on a terminal only, and not when NO_COLOR is set to anything (no-color.org) or the terminal is "dumb". */
export function coloursFor({ isTerminal, env }: Terminal): Colours {
  const isOn = isTerminal && !env['NO_COLOR'] && env['TERM'] !== 'dumb';
  const paint = ([on, off]: readonly [number, number]) => {
    return (text: string): string => (isOn ? `\u001B[${on}m${text}\u001B[${off}m` : text);
  };
  return {
    bold: paint(codes.bold),
    bad: paint(codes.bad),
    warn: paint(codes.warn),
    good: paint(codes.good),
    faint: paint(codes.faint),
  };
}

/** Standard output as it is now; where it is no terminal, as wide as COLUMNS says (POSIX), else 80. */
export function standardOutput(): Terminal {
  const { isTTY, columns } = process.stdout;
  const stated = Number(process.env['COLUMNS']);
  const isStated = Number.isInteger(stated) && stated > 0;
  return { isTerminal: Boolean(isTTY), columns: columns ?? (isStated ? stated : 80), env: process.env };
}
