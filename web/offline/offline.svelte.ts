/** Whether the page works without network, and whether a newer one waits. A new version is offered and never forced. */
import type { Workbox } from 'workbox-window';

/** What is used of what registers a service worker. */
export type Registrar = Pick<Workbox, 'addEventListener' | 'register' | 'messageSkipWaiting' | 'update'>;

/** The window as far as a change of versions concerns it. */
export interface Place {
  /** Whether a service worker serves this tab already. */
  isServed(): boolean;
  reload(): void;
}

export class Offline {
  #isReady = $state(false);
  #isOffered = $state(false);
  #isRenewed = $state(false);
  #isTaken = false;
  #registrar: Registrar;
  #place: Place;

  constructor(registrar: Registrar, place: Place) {
    this.#registrar = registrar;
    this.#place = place;
    let isServed = place.isServed();
    registrar.addEventListener('activated', () => (this.#isReady = true));
    registrar.addEventListener('waiting', () => (this.#isOffered = true));
    registrar.addEventListener('controlling', () => {
      if (isServed) this.#renewed();
      isServed = true;
    });
  }

  /** Every file of the page is in the browser. */
  get isReady(): boolean {
    return this.#isReady;
  }
  /** A new version is in the browser and waits. */
  get isOffered(): boolean {
    return this.#isOffered;
  }
  /** Another tab took a new version: parts that this tab has not loaded yet may be gone. */
  get isRenewed(): boolean {
    return this.#isRenewed;
  }

  /** Where the browser allows it, or else the page works with the network only. */
  async begin(): Promise<void> {
    const registration = await this.#registrar.register({ immediate: true }).catch(() => undefined);
    if (registration?.active) this.#isReady = true;
  }

  /** Whether there is a newer version than the one that was looked for last. Without network there is none. */
  look(): void {
    this.#registrar.update().catch(() => undefined);
  }

  /** Reloads the page as its new version. */
  take(): void {
    this.#isTaken = true;
    if (this.#isRenewed) this.#place.reload();
    else this.#registrar.messageSkipWaiting();
  }

  /** Not asked again before the page is opened anew. */
  later(): void {
    this.#isOffered = this.#isRenewed = false;
  }

  #renewed(): void {
    this.#isOffered = false;
    if (this.#isTaken) this.#place.reload();
    else this.#isRenewed = true;
  }
}
