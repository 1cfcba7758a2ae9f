/**
 * Pieces laid on pages in shelves: the tallest first, from left to right, a new shelf above, a new page at last. Some are turned by a
 * quarter where that takes fewer pages.
 */

export interface Size {
  width_mm: number;
  height_mm: number;
}

export interface Placed {
  /** Of the piece in the list that was given. */
  piece: number;
  page: number;
  x_mm: number;
  y_mm: number;
  isTurned: boolean;
}

/** Between pieces [mm] */
const GAP_MM = 5;

export const turnedSize = ({ width_mm, height_mm }: Size): Size => ({
  width_mm: height_mm,
  height_mm: width_mm,
});

export const fits = (size: Size, page: Size): boolean =>
  size.width_mm <= page.width_mm + 1e-9 && size.height_mm <= page.height_mm + 1e-9;

/** Where each piece lies; all of them fit a page, upright or turned. None is turned on a page that holds its pieces upright too. */
export function nested(pieces: readonly Size[], page: Size): Placed[] {
  const placed = cheapest(pieces, page);
  const pages = Math.max(-1, ...placed.map((one) => one.page)) + 1;
  return Array.from({ length: pages }, (_, number) => {
    const here = placed.filter((one) => one.page === number).map(({ piece }) => piece);
    const again = cheapest(
      here.map((piece) => pieces[piece]!),
      page,
    );
    return again.map((one) => ({ ...one, piece: here[one.piece]!, page: number }));
  }).flat();
}

/** By the way that takes the fewest pages, and of as many turns the fewest. */
function cheapest(pieces: readonly Size[], page: Size): Placed[] {
  const ways = WAYS.map((way) => inShelves(pieces, page, way));
  return ways.reduce((best, way) => (costOf(way) < costOf(best) ? way : best));
}

const costOf = (placed: readonly Placed[]): number =>
  Math.max(0, ...placed.map((one) => one.page)) * (placed.length + 1) +
  placed.filter(({ isTurned }) => isTurned).length;

/** A piece upright or turned. */
interface Lies extends Size {
  isTurned: boolean;
}

interface Way {
  /** How a piece that fits both ways begins a shelf. */
  isWanted: (lies: Lies) => boolean;
  /** Whether a piece is turned to fit a shelf that was begun. */
  turnsToFit: boolean;
}

const WAYS: readonly Way[] = [
  { isWanted: ({ isTurned }) => !isTurned, turnsToFit: false },
  { isWanted: ({ isTurned }) => !isTurned, turnsToFit: true },
  { isWanted: ({ width_mm, height_mm }) => width_mm >= height_mm, turnsToFit: true },
  { isWanted: ({ width_mm, height_mm }) => height_mm >= width_mm, turnsToFit: true },
];

interface Shelf {
  page: number;
  foot_mm: number;
  height_mm: number;
  used_mm: number;
}

function inShelves(pieces: readonly Size[], page: Size, { isWanted, turnsToFit }: Way): Placed[] {
  const shelves: Shelf[] = [];
  const order = pieces.map((size, piece) => {
    const both = [
      { ...size, isTurned: false },
      { ...turnedSize(size), isTurned: true },
    ];
    const possible = both.filter((lies) => fits(lies, page));
    const wanted = possible.find(isWanted) ?? possible[0]!;
    const others = turnsToFit ? possible.filter((one) => one !== wanted) : [];
    const ways: [Lies, ...Lies[]] = [wanted, ...others];
    return { piece, wanted, ways };
  });
  order.sort((a, b) => b.wanted.height_mm - a.wanted.height_mm || a.piece - b.piece);
  return order.map(({ piece, ways }) => {
    const { shelf, lies } = roomOn(shelves, ways, page) ?? newShelf(shelves, ways, page);
    const { isTurned } = lies;
    const placed = { piece, page: shelf.page, x_mm: shelf.used_mm, y_mm: shelf.foot_mm, isTurned };
    shelf.used_mm += lies.width_mm + GAP_MM;
    return placed;
  });
}

interface Room {
  shelf: Shelf;
  lies: Lies;
}

/** The first shelf with room for a piece, and the first way that it has room for. */
function roomOn(shelves: readonly Shelf[], ways: readonly Lies[], page: Size): Room | undefined {
  for (const shelf of shelves) {
    const lies = ways.find(
      ({ width_mm, height_mm }) =>
        height_mm <= shelf.height_mm && shelf.used_mm + width_mm <= page.width_mm + 1e-9,
    );
    if (lies) return { shelf, lies };
  }
  return undefined;
}

/** Over the last one of the first page that is high enough; on a new page as the piece is wanted. */
function newShelf(shelves: Shelf[], ways: readonly [Lies, ...Lies[]], page: Size): Room {
  const feet: number[] = [];
  for (const shelf of shelves) feet[shelf.page] = shelf.foot_mm + shelf.height_mm + GAP_MM;
  const found = ways.flatMap((lies) => {
    const on = feet.findIndex((foot_mm) => foot_mm + lies.height_mm <= page.height_mm + 1e-9);
    return on < 0 ? [] : [{ lies, at: { page: on, foot_mm: feet[on]! } }];
  });
  const { lies, at } = found[0] ?? { lies: ways[0], at: { page: feet.length, foot_mm: 0 } };
  const shelf = { ...at, height_mm: lies.height_mm, used_mm: 0 };
  shelves.push(shelf);
  return { shelf, lies };
}
