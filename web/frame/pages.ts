/** The pages of the sheet, in their order in the top line; the mark is what the address says of it. */
export const PAGES = [
  { mark: 'stint', name: 'Stint' },
  { mark: 'plan', name: 'Plan' },
  { mark: 'cut', name: 'Cut' },
] as const;

/** One more is reached from the foot of the stint. */
export type PageMark = (typeof PAGES)[number]['mark'] | 'trust';

/** The page that an address asks for; the stint where it asks for none. */
export const pageAt = (hash: string): PageMark =>
  hash === '#trust' ? 'trust' : (PAGES.find(({ mark }) => hash === `#${mark}`)?.mark ?? 'stint');
