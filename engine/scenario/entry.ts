/** An entry of the library as a list shows it. */
export interface Entry {
  id: string;
  name: string;
  purpose: string;
  /** Of a circuit. */
  length_km?: number;
}

/** The file of a name. Throws on one that is not there. */
export function entryOf<T extends { id: string }>(files: readonly T[], id: string): T {
  const found = files.find((file) => file.id === id);
  if (!found) throw new Error(`not in the library: ${id}`);
  return found;
}
