/** Pieces laid on pages in shelves: the tallest first, from left to right, a new shelf above, a new page at last. None is turned. */

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
}

/** Between pieces [mm] */
const GAP_MM = 5;

interface Shelf {
  page: number;
  foot_mm: number;
  height_mm: number;
  used_mm: number;
}

export const fits = (size: Size, page: Size): boolean =>
  size.width_mm <= page.width_mm + 1e-9 && size.height_mm <= page.height_mm + 1e-9;

/** Where each piece lies; all of them fit a page. */
export function nested(pieces: readonly Size[], page: Size): Placed[] {
  const shelves: Shelf[] = [];
  const order = pieces.map((_, piece) => piece);
  order.sort((a, b) => pieces[b]!.height_mm - pieces[a]!.height_mm || a - b);
  return order.map((piece) => {
    const size = pieces[piece]!;
    const shelf = shelves.find((one) => hasRoom(one, size, page)) ?? newShelf(shelves, size, page);
    const placed = { piece, page: shelf.page, x_mm: shelf.used_mm, y_mm: shelf.foot_mm };
    shelf.used_mm += size.width_mm + GAP_MM;
    return placed;
  });
}

const hasRoom = (shelf: Shelf, size: Size, page: Size): boolean =>
  size.height_mm <= shelf.height_mm && shelf.used_mm + size.width_mm <= page.width_mm + 1e-9;

function newShelf(shelves: Shelf[], { height_mm }: Size, page: Size): Shelf {
  const last = shelves.at(-1);
  const above_mm = last ? last.foot_mm + last.height_mm + GAP_MM : 0;
  const isFull = above_mm + height_mm > page.height_mm + 1e-9;
  const at = { page: (last?.page ?? 0) + (isFull ? 1 : 0), foot_mm: isFull ? 0 : above_mm };
  const shelf = { ...at, height_mm, used_mm: 0 };
  shelves.push(shelf);
  return shelf;
}
