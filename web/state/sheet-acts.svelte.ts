/** What can be done with the sheet as a whole: opened, saved, shared, begun anew. What came of it is told in `news`. */
import { fileOpen, fileSave } from 'browser-fs-access';
import type { Scenario } from '../../engine/index.ts';
import { defaultScenario } from '../../engine/scenario/default-scenario.ts';
import { keepFile, recallFile } from './kept-storage.ts';
import { scenarioHash } from './scenario-hash.ts';
import type { Session } from './session.svelte.ts';
import { fragmentOf, LONGEST_LINK, type Linked } from './share-link.ts';
import { fileName, fileText, readFile } from './sheet-file.ts';

export interface News {
  words: string;
  /** One line each. */
  more: readonly string[];
  isWrong: boolean;
}

/** With the scenario that it was said of. */
type Said = News & { of: Scenario };

/** A link, or why there is none. */
export type Shared = { link: string } | { why: string };

export const FILES = { description: 'Sheet', extensions: ['.json'], mimeTypes: ['application/json'] };

export class SheetActs {
  #session: Session;
  #news = $state.raw<Said | null>(null);
  #file = $state.raw<FileSystemFileHandle | null>(null);
  /** Hash of the scenario that is in a file. */
  #saved = $state('');

  constructor(session: Session) {
    this.#session = session;
    recallFile().then(
      (kept) => {
        if (!kept || this.#file || this.#saved) return;
        this.#file = kept.handle;
        this.#saved = kept.hash;
      },
      () => undefined,
    );
  }

  /** What went well, and needs no second look, is said until the next change. */
  get news(): News | null {
    const news = this.#news;
    const stays = news !== null && (news.isWrong || news.more.length > 0);
    return stays || news?.of === this.#session.scenario ? news : null;
  }
  /** The name of the file that is written again; null where the next saving asks for one. */
  get fileName(): string | null {
    return this.#file?.name ?? null;
  }
  /** All that is in the sheet is in a file. */
  get isSaved(): boolean {
    return this.#saved === scenarioHash(this.#session.scenario);
  }

  say(words: string, more: readonly string[] = [], isWrong = false): void {
    this.#news = { words, more, isWrong, of: this.#session.scenario };
  }
  hush(): void {
    this.#news = null;
  }

  /** Into the file that it was saved in last, or another one. */
  async save(isCopy = false): Promise<void> {
    const { scenario } = this.#session;
    const name = fileName(scenario, Date.now());
    try {
      const file = await write(fileText(scenario), name, isCopy ? null : this.#file);
      this.#saved = scenarioHash(scenario);
      if (!isCopy) this.#hold(file);
      this.say(`Saved in ${file?.name ?? `${name}, where the browser puts what it loads down`}.`);
    } catch (error) {
      if (!isLeft(error)) this.say(`The file could not be written: ${causeOf(error)}.`, [], true);
    }
  }

  /** Text that is not the sheet's own, under a name of its own. */
  async saveText(text: string, name: string): Promise<void> {
    await write(text, name, null).catch((error: unknown) => {
      if (!isLeft(error)) this.say(`The file could not be written: ${causeOf(error)}.`, [], true);
    });
  }

  async open(): Promise<void> {
    try {
      const file = await fileOpen({ ...FILES, id: 'sheet' });
      await this.openFile(file, file.handle ?? null);
    } catch (error) {
      if (!isLeft(error)) this.say(`The file could not be read: ${causeOf(error)}.`, [], true);
    }
  }

  async openFile(file: File, handle: FileSystemFileHandle | null = null): Promise<void> {
    const read = readFile(await file.text());
    if (!read.ok)
      return this.say(`${file.name} is not opened, and nothing has changed.`, read.problems, true);
    this.#session.replace(read.scenario, 'file');
    this.#saved = scenarioHash(this.#session.scenario);
    this.#hold(handle);
    this.say(`${file.name} is open. Undo brings back what was here.`, read.notes);
  }

  /** What a link held that was opened while the page was. */
  openLinked(linked: Linked): void {
    if (linked.ok) this.take(linked.scenario, 'link');
    this.sayLinked(linked);
  }

  sayLinked(linked: Linked): void {
    if (linked.ok) this.say('This is the sheet of the link. Undo brings back what was here.', linked.notes);
    else this.say(`The link is broken: ${linked.why}. What was here is still here.`, [], true);
  }

  async share(): Promise<Shared> {
    const { scenario } = this.#session;
    if (scenario.trace)
      return { why: 'A stint on a measured lap does not fit into a link. Save it and send the file.' };
    const here = location.href.replace(/#.*/, '');
    const link = `${here}${await fragmentOf(scenario)}`;
    if (link.length <= LONGEST_LINK) return { link };
    const size = `${link.length} letters, and ${LONGEST_LINK} is what travels safely`;
    return { why: `Too much of this sheet is its own for a link: ${size}. Save it and send the file.` };
  }

  startOver(): void {
    this.take(defaultScenario(), 'starting over');
    this.say('This is the sheet that the page opens with at first. Undo brings back what was here.');
  }

  /** Another sheet: the file of the one before is not written with it. */
  take(scenario: Scenario, name: string): void {
    this.#session.replace(scenario, name);
    this.#hold(null);
  }

  #hold(handle: FileSystemFileHandle | null): void {
    this.#file = handle;
    keepFile(handle && { handle, hash: this.#saved }).catch(() => undefined); // asked for again after a reload
  }
}

const all = new WeakMap<Session, SheetActs>();

/** Those of the sheet that a session is about. */
export function actsOn(session: Session): SheetActs {
  const acts = all.get(session) ?? new SheetActs(session);
  all.set(session, acts);
  return acts;
}

export const write = (
  text: string,
  name: string,
  file: FileSystemFileHandle | null,
): Promise<FileSystemFileHandle | null> =>
  fileSave(new Blob([text], { type: 'application/json' }), { ...FILES, fileName: name, id: 'sheet' }, file);

/** The person has closed the browser's own window. */
export const isLeft = (error: unknown): boolean =>
  error instanceof DOMException && error.name === 'AbortError';

export const causeOf = (error: unknown): string =>
  (error instanceof Error ? error.message : String(error)).replace(/\.$/, '');
