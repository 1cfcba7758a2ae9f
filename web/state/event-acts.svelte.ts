/** The event's own file: opened and saved. What came of it is told in `news`. */
import { fileOpen } from 'browser-fs-access';
import { eventFileName, eventText, readEvent, type EventPart } from './event-part.ts';
import type { Session } from './session.svelte.ts';
import { causeOf, FILES, isLeft, write, type News } from './sheet-acts.svelte.ts';

export class EventActs {
  #session: Session;
  #news = $state.raw<News | null>(null);

  constructor(session: Session) {
    this.#session = session;
  }

  get news(): News | null {
    return this.#news;
  }

  async save(event: EventPart): Promise<void> {
    const name = eventFileName(event);
    try {
      const file = await write(eventText(event, this.#session.scenario), name, null);
      this.#say(
        `Saved in ${file?.name ?? `${name}, where the browser puts what it loads down`}, with the stint.`,
      );
    } catch (error) {
      if (!isLeft(error)) this.#say(`The file could not be written: ${causeOf(error)}.`, [], true);
    }
  }

  async open(): Promise<void> {
    try {
      await this.openFile(await fileOpen({ ...FILES, description: 'Event', id: 'event' }));
    } catch (error) {
      if (!isLeft(error)) this.#say(`The file could not be read: ${causeOf(error)}.`, [], true);
    }
  }

  async openFile(file: File): Promise<void> {
    const read = readEvent(await file.text());
    if (!read.ok)
      return this.#say(`${file.name} is not opened, and nothing has changed.`, read.problems, true);
    this.#session.replace(read.scenario, 'event file', read.event);
    this.#say(`${file.name} is open, with its stint. Undo brings back what was here.`, read.notes);
  }

  #say(words: string, more: readonly string[] = [], isWrong = false): void {
    this.#news = { words, more, isWrong };
  }
}
