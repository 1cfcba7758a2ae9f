import type { ExportedFunction } from './functions.ts';

export interface Example {
  path: string;
  name: string;
  call: string;
  /** What the comment prints after the arrow. */
  printed: string;
}

/** The lines `call // => digits` under the `@example` tags of a function's doc comment. */
export function examplesOf({ path, name, doc }: ExportedFunction): Example[] {
  const blocks = doc.split(/^@/m).filter((block) => block.startsWith('example'));
  return blocks.flatMap((block) => {
    const code = block.slice('example'.length).replace(/^```.*$/gm, '');
    return [...code.matchAll(/([^]*?)\/\/ => *(.*)/g)].map(([, call = '', printed = '']) => ({
      path,
      name,
      call: call.trim().replace(/;$/, ''),
      printed: printed.trim(),
    }));
  });
}

/** A printed number and how far the truth may be from it: half a unit in its last digit. */
export function readDigits(printed: string): { value: number; tolerance: number } | undefined {
  const match = /^([-−]?)(\d[\d_]*)(?:\.(\d+))?(?:e([-+]?\d+))?(?= |$)/.exec(printed);
  if (!match) return undefined;
  const [, sign, whole = '', decimals = '', exponent = '0'] = match;
  const magnitude = Number(`${whole.replaceAll('_', '')}.${decimals}e${exponent}`);
  const lastDigit = 10 ** (Number(exponent) - decimals.length);
  return { value: sign ? -magnitude : magnitude, tolerance: 0.5 * lastDigit * (1 + 1e-9) };
}
