/** Whether the browser keeps the sheet, for whoever shows it. */

class KeptState {
  #savedAt_ms = $state<number | null>(null);
  #problem = $state('');

  /** When it was kept last, milliseconds since 1970; null where it never was. */
  get savedAt_ms(): number | null {
    return this.#savedAt_ms;
  }
  /** Why it is not kept, in a few words; empty where it is. */
  get problem(): string {
    return this.#problem;
  }

  kept(at_ms: number): void {
    this.#savedAt_ms = at_ms;
    this.#problem = '';
  }
  failed(why: string): void {
    this.#problem = why;
  }
}

export const keptSheet = new KeptState();
