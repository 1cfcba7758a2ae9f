let asked = $state(0);

/** How often the run sheet was asked for by other ways than the browser's own. */
export const printAsked = (): number => asked;
export const askPrint = (): void => void (asked += 1);
