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

describe('starts of laps that cannot be used', () => {
  const mistyped = async () => {
    const start = await opened();
    start.reader.mistype('0, NaN', ['“NaN” is no time']);
    return start;
  };

  it('stay as they were typed while something else is corrected', async () => {
    const { reader } = await mistyped();
    void reader.choose({ units: { 1: 'mph' } });
    expect(reader.mistyped).toEqual({ text: '0, NaN', errors: ['“NaN” is no time'] });
  });

  it('go when others are given, laps are cut in another way, or the file is put away', async () => {
    for (const change of [{ lapStarts_s: [0, 9] }, { lapsBy: 'none' as const }]) {
      const { reader } = await mistyped();
      void reader.choose(change);
      expect(reader.mistyped).toBeNull();
    }
    const { reader } = await mistyped();
    reader.close();
    expect(reader.mistyped).toBeNull();
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

/** A reading of nothing: no lap, and what is in the way. */
const nothing = { ...readingOf(), problems: ['header: no column is named as a speed'], columns: null };
const lap = { lap: 1, start_s: 0, duration_s: 24, length_m: 900, problem: '' };
const withLaps = (problems: string[]) => {
  const reading = readingOf();
  return { problems, understood: { ...reading.understood!, laps: [lap] }, columns: null };
};

/** A file read as it is guessed and as it was corrected before. */
async function recalled(guessed = readingOf(), corrected = readingOf({ decimal: ',' })) {
  const start = started();
  start.kept.set('header', { choices: { decimal: ',' }, at_ms: NOON_MS });
  void start.reader.open(file());
  start.last().answer(guessed);
  await settled();
  start.last().answer(corrected);
  await settled();
  return start;
}

describe('a correction that is of no use', () => {
  it('is not remembered: nothing could be run with it', async () => {
    const { reader, last, kept } = await opened();
    void reader.choose({ delimiter: '|' });
    last().answer(nothing);
    await settled();
    expect(reader.choices).toEqual({ delimiter: '|' });
    expect(kept.size).toBe(0);
  });

  it('is remembered once another one makes it useful', async () => {
    const { reader, last, kept } = await opened();
    void reader.choose({ units: { 0: 's' } });
    last().answer(withLaps(['column Speed: expected a unit']));
    await settled();
    expect(kept.size).toBe(0);
    void reader.choose({ units: { 1: 'mph' } });
    last().answer();
    await settled();
    expect(kept.get('header')?.choices).toEqual({ units: { 0: 's', 1: 'mph' } });
  });

  it('is dropped when the next file cannot be read with it, and the file is read without', async () => {
    const guessed = readingOf();
    const { reader, kept } = await recalled(guessed, nothing);
    expect([kept.size, reader.leftOut, reader.correctedAt_ms]).toEqual([
      0,
      { at_ms: NOON_MS, isDropped: true },
      null,
    ]);
    expect([reader.reading, reader.choices, reader.isBusy]).toEqual([guessed, {}, false]);
  });

  it('is set aside for a file that has problems with it alone, and kept for the next', async () => {
    const guessed = readingOf();
    const { reader, kept, last } = await recalled(guessed, withLaps(['lap 1: 900 km/h']));
    expect([kept.size, reader.leftOut]).toEqual([1, { at_ms: NOON_MS, isDropped: false }]);
    expect([reader.reading, reader.choices]).toEqual([guessed, {}]);
    void reader.forget();
    last().answer();
    await settled();
    expect([kept.size, reader.leftOut]).toEqual([0, null]);
  });

  it('is used where the file has problems either way', async () => {
    const { reader, kept } = await recalled(nothing, withLaps(['row 3']));
    expect([kept.size, reader.leftOut, reader.correctedAt_ms]).toEqual([1, null, NOON_MS]);
    expect(reader.choices).toEqual({ decimal: ',' });
  });

  it('is out of mind when a new one takes its place', async () => {
    const { reader, kept, last } = await recalled(readingOf(), withLaps(['lap 1: 900 km/h']));
    void reader.choose({ units: { 1: 'mph' } });
    last().answer();
    await settled();
    expect([kept.get('header')?.choices, reader.leftOut]).toEqual([{ units: { 1: 'mph' } }, null]);
  });
});

describe('files that come together', () => {
  it('are named where they are not read, until the next one', async () => {
    const { reader } = started();
    void reader.open(file('a.csv'), ['b.csv']);
    expect([reader.name, reader.others]).toEqual(['a.csv', ['b.csv']]);
    void reader.open(file('c.csv'));
    expect(reader.others).toEqual([]);
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
