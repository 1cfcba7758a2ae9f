import { describe, expect, it } from 'vitest';
import { correctionOf } from '../../../web/state/remembered.ts';
import { TraceReader } from '../../../web/state/trace-reader.svelte.ts';
import { fakeDoor, fakeMemory, readingOf, settled } from '../../support/fake-trace-door.ts';

const NOON_MS = 1_764_072_000_000;
const file = (name = 'log.csv') => new File(['a'], name);

function started(isDenied = false) {
  const door = fakeDoor();
  const { memory, kept } = fakeMemory(isDenied);
  const reader = new TraceReader(door.open, memory, door.alarm, () => NOON_MS);
  return { ...door, kept, reader };
}

/** Its bytes are never asked for. */
const huge = Object.defineProperty(file('huge.csv'), 'size', { value: 60e6 });

/** A reader that shows the file as it was guessed. */
async function opened(isDenied = false) {
  const start = started(isDenied);
  void start.reader.open(file());
  start.last().answer();
  await settled();
  return start;
}

describe('the reader of trace files', () => {
  it('shows what it understood', async () => {
    const { reader, last } = started();
    void reader.open(file());
    expect([reader.isOpen, reader.isBusy, reader.reading]).toEqual([true, true, null]);
    last().progress(0.4);
    expect(reader.progress).toBe(0.4);
    last().answer();
    await settled();
    expect([reader.isBusy, reader.reading?.understood?.rows]).toEqual([false, 240]);
  });

  it('refuses a file above 50 MB before reading it', async () => {
    const { reader, asked } = started();
    await reader.open(huge);
    expect(reader.problems).toEqual(['file: expected at most 50 MB, got 60 MB']);
    expect(asked).toEqual([]);
  });

  it('shows the problems of the reading, and what the scenario refuses until the next one', async () => {
    const { reader, last } = await opened();
    void reader.choose({ decimal: ',' });
    last().answer({ ...readingOf(), problems: ['row 3: no number'], columns: null });
    await settled();
    expect(reader.problems).toEqual(['row 3: no number']);
    reader.refuse(['trace: too long']);
    expect(reader.problems).toEqual(['trace: too long']);
    void reader.choose({ decimal: '.' });
    last().answer();
    await settled();
    expect(reader.problems).toEqual([]);
  });

  it('keeps nothing of a file that was put away', async () => {
    const { reader, last, closed } = started();
    void reader.open(file());
    reader.close();
    last().answer();
    await settled();
    expect([reader.reading, reader.isOpen]).toEqual([null, false]);
    expect(closed).toEqual([0]);
  });

  it('shows the second of two files, whichever is read first', async () => {
    const { reader, asked } = started();
    void reader.open(file('one.csv'));
    void reader.open(file('two.csv'));
    asked[1]!.answer(readingOf({}, 'two'));
    asked[0]!.answer(readingOf({}, 'one'));
    await settled();
    expect([reader.name, reader.reading?.understood?.fingerprint]).toEqual(['two.csv', 'two']);
  });
});

describe('corrections', () => {
  it('show at once and are read with; the latest wins', async () => {
    const { reader, asked, last } = await opened();
    void reader.choose({ decimal: ',' });
    void reader.choose({ units: { 1: 'mph' } });
    expect(reader.choices).toEqual({ decimal: ',', units: { 1: 'mph' } });
    asked[1]!.answer();
    last().answer();
    await settled();
    expect(reader.reading?.understood?.decimal).toBe(',');
    expect(last().choices).toEqual({ decimal: ',', units: { 1: 'mph' } });
  });

  it('leave what was shown when they are stopped', async () => {
    const { reader, last, closed, kept } = await opened();
    const before = reader.reading;
    void reader.choose({ decimal: ',' });
    reader.stop();
    last().answer();
    await settled();
    expect(reader.reading).toBe(before);
    expect([reader.choices, reader.isBusy, kept.size]).toEqual([{}, false, 0]);
    expect(closed).toEqual([0]);
  });

  it('stop a first reading by putting the file away', () => {
    const { reader } = started();
    void reader.open(file());
    reader.stop();
    expect(reader.isOpen).toBe(false);
  });

  it('are not lost when the worker dies twice, and can be tried again', async () => {
    const { reader, last } = await opened();
    const before = reader.reading;
    void reader.choose({ decimal: ',' });
    last().die();
    await settled();
    last().die();
    await settled();
    expect(reader.failure).toBe('Reading stopped twice: out of memory. Nothing you entered is lost.');
    expect([reader.choices, reader.reading, reader.isBusy]).toEqual([{ decimal: ',' }, before, false]);
    void reader.retry();
    expect([reader.failure, last().choices]).toEqual(['', { decimal: ',' }]);
    last().answer();
    await settled();
    expect(reader.reading?.understood?.decimal).toBe(',');
  });

  it('give the first lap its start when times are asked for and none is given', async () => {
    const { reader, last } = await opened();
    void reader.choose({ lapsBy: 'times' });
    expect(last().choices).toEqual({ lapsBy: 'times', lapStarts_s: [0] });
  });

  it('let a first reading that failed be tried again', async () => {
    const { reader, last, asked } = started();
    void reader.open(file());
    last().die();
    await settled();
    last().die();
    await settled();
    expect([reader.isOpen, reader.reading]).toEqual([true, null]);
    void reader.retry();
    expect(asked).toHaveLength(3);
    last().answer();
    await settled();
    expect(reader.reading?.understood?.rows).toBe(240);
  });
});

describe('what is remembered', () => {
  it('is what was corrected, under the header as it was guessed, without the lap', async () => {
    const { reader, last, kept } = await opened();
    void reader.choose({ delimiter: ';' });
    last().answer(readingOf({ delimiter: ';' }, 'another header'));
    await settled();
    void reader.choose({ lap: 2 });
    last().answer();
    await settled();
    expect([...kept]).toEqual([['header', { choices: { delimiter: ';' }, at_ms: NOON_MS }]]);
  });

  it('holds a correction whose reading was overtaken by the choice of a lap', async () => {
    const { reader, last, kept } = await opened();
    void reader.choose({ decimal: ',' });
    void reader.choose({ lap: 2 });
    last().answer();
    await settled();
    expect(kept.get('header')?.choices).toEqual({ decimal: ',' });
  });

  it('is not the choice of a lap alone', async () => {
    const { reader, last, kept } = await opened();
    void reader.choose({ lap: 2 });
    last().answer();
    await settled();
    expect(kept.size).toBe(0);
  });

  it('is applied to the next file with the same header, which is shown only then', async () => {
    const { reader, last, kept, asked } = started();
    kept.set('header', { choices: { decimal: ',' }, at_ms: NOON_MS });
    void reader.open(file());
    last().answer();
    await settled();
    expect([reader.reading, reader.isBusy]).toEqual([null, true]);
    expect(asked.map(({ choices }) => choices)).toEqual([{}, { decimal: ',' }]);
    last().answer();
    await settled();
    expect([reader.correctedAt_ms, reader.reading?.understood?.decimal]).toEqual([NOON_MS, ',']);
  });

  it('is not applied to a file with another header', async () => {
    const { reader, last, kept } = started();
    kept.set('other', { choices: { decimal: ',' }, at_ms: NOON_MS });
    void reader.open(file());
    last().answer();
    await settled();
    expect([reader.correctedAt_ms, reader.choices]).toEqual([null, {}]);
  });

  it('can be forgotten: the file is read as guessed', async () => {
    const { reader, last, kept } = started();
    kept.set('header', { choices: { decimal: ',' }, at_ms: NOON_MS });
    void reader.open(file());
    last().answer();
    await settled();
    last().answer();
    await settled();
    void reader.forget();
    last().answer();
    await settled();
    expect([kept.size, reader.correctedAt_ms, reader.reading?.understood?.decimal]).toEqual([0, null, '.']);
  });

  it('is nothing where storage is denied, and the import goes on', async () => {
    const { reader, last } = await opened(true);
    expect(reader.isForgetful).toBe(true);
    void reader.choose({ decimal: ',' });
    last().answer();
    await settled();
    expect([reader.reading?.understood?.decimal, reader.failure]).toEqual([',', '']);
  });

  it('is taken for nothing when it was not stored by this page', () => {
    expect(['text', null, {}, { choices: null, at_ms: 1 }, { choices: {} }].map(correctionOf)).toEqual(
      Array.from({ length: 5 }, () => null),
    );
    expect(correctionOf({ choices: { decimal: ',' }, at_ms: 1 })).toEqual({
      choices: { decimal: ',' },
      at_ms: 1,
    });
  });
});
