/** One step down or up, to a whole multiple of the step: free of what a sum of binary fractions leaves. */
export function nextStep(from: number, step: number, direction: 1 | -1): number {
  const steps = direction > 0 ? Math.floor(from / step + 1e-9) + 1 : Math.ceil(from / step - 1e-9) - 1;
  return Number((steps * step).toFixed(6));
}
