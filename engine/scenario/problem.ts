/** One thing wrong with an input: which key, what was found, what was expected. All are reported at once. */
export interface Problem {
  key: string;
  /** The value found, as text. */
  value: string;
  expected: string;
  /** A guess at the cause, such as "kelvin?"; empty if there is none. */
  hint: string;
}

export const problem = (key: string, value: unknown, expected: string, hint = ''): Problem => ({
  key,
  value: show(value),
  expected,
  hint,
});

/** Of a temperature in °C that is beyond what there is. */
export const tooHotHint = (value: number): string =>
  value >= 230 && value <= 330 ? 'kelvin?' : 'Fahrenheit?';

/** `conditions.ambient_C: expected -30 to 55, got 295 (kelvin?)` */
export const problemLine = (p: Problem): string =>
  `${p.key}: expected ${p.expected}, got ${p.value}${p.hint ? ` (${p.hint})` : ''}`;

function show(value: unknown): string {
  if (value === undefined) return 'nothing';
  const text = typeof value === 'string' ? `'${value}'` : (JSON.stringify(value) ?? String(value));
  return text.length > 60 ? `${text.slice(0, 57)}...` : text;
}
