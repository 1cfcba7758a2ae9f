/** Works out a sum as a note prints it: + − · / brackets, fourth powers, min and max of a list, up and down to a whole. */

const LISTS: Record<string, (values: number[]) => number> = {
  min: (values) => Math.min(...values),
  max: (values) => Math.max(...values),
  up: ([value]) => Math.ceil(value!),
  down: ([value]) => Math.floor(value!),
};

/** Throws on anything that is no sum. */
export function workedOut(text: string): number {
  const tokens = text.replaceAll('10⁶', '1000000').match(/\d+(?:\.\d+)?|[a-z]+|\S/g) ?? [];
  const take = (): string => tokens.shift() ?? '';
  const expected = (token: string): void => {
    const got = take();
    if (got !== token) throw new Error(`sum: expected "${token}", got "${got}" in "${text}"`);
  };

  function factor(): number {
    const token = take();
    let value: number;
    if (token === '−') return -factor();
    if (token === '(') {
      value = sum();
      expected(')');
    } else if (LISTS[token]) {
      expected('(');
      const values = [sum()];
      while (tokens[0] === ';') {
        take();
        values.push(sum());
      }
      expected(')');
      value = LISTS[token](values);
    } else {
      value = Number(token);
      if (token === '' || Number.isNaN(value)) throw new Error(`sum: got "${token}" in "${text}"`);
    }
    if (tokens[0] !== '⁴') return value;
    take();
    return value ** 4;
  }
  function product(): number {
    let value = factor();
    while (tokens[0] === '·' || tokens[0] === '/')
      value = take() === '·' ? value * factor() : value / factor();
    return value;
  }
  function sum(): number {
    let value = product();
    while (tokens[0] === '+' || tokens[0] === '−')
      value = take() === '+' ? value + product() : value - product();
    return value;
  }
  const found = sum();
  if (tokens.length > 0) throw new Error(`sum: "${tokens.join(' ')}" is left of "${text}"`);
  return found;
}

/** A printed number: "−17.3 K", "57 to 66 %" is its first. */
export const numberOf = (text: string): number => Number(/−?\d+(\.\d+)?/.exec(text)![0].replace('−', '-'));
