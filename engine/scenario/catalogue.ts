/** What a list shows of the library: the files themselves are loaded when one is chosen. A test holds the two to each other. */
import type { Entry } from './entry.ts';

export const cars: readonly Entry[] = [
  {
    id: 'heavy',
    name: 'Heavy closed car',
    purpose: 'A fast, heavy closed car with large ducts: the window is narrow and the tape decides.',
  },
  {
    id: 'light',
    name: 'Light club car',
    purpose: 'A light car with one small front duct and solid rear discs without any.',
  },
];

export const circuits: readonly Entry[] = [
  {
    id: 'sorrelby',
    name: 'Sorrelby',
    length_km: 5.3,
    purpose: 'Fast: four hard stops, long straights between them, the discs cool before each.',
  },
  {
    id: 'long',
    name: 'Orrowfell',
    length_km: 8,
    purpose: 'Long, over two hills: a stop downhill takes more heat, a stop uphill less.',
  },
  {
    id: 'slow',
    name: 'Tibbinlow',
    length_km: 2.4,
    purpose: 'Slow and twisty: many short stops, little air between them.',
  },
];

export const stints: readonly Entry[] = [
  {
    id: 'sorrelby-20',
    name: 'Twenty laps of Sorrelby',
    purpose: 'Opens first: a warm day, the front taped a little too far.',
  },
  {
    id: 'restart',
    name: 'A safety car in the middle',
    purpose: 'Three slow laps cool the discs: how cold is the first stop after the restart?',
  },
  {
    id: 'hour',
    name: 'An hour: stop, safety car, rain',
    purpose:
      'Starts one panel more closed and pulls it at the stop; then slow laps and a wet track leave the discs cold.',
  },
  {
    id: 'night-rain',
    name: 'Into the night, then rain',
    purpose: 'The long circuit at dusk: cold air first, then a wet track, with tape that stays on.',
  },
  {
    id: 'club-evening',
    name: 'Club evening on the slow circuit',
    purpose: 'The light car on many short laps: a small duct, no duct at the rear.',
  },
];
