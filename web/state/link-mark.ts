/** What the fragment of a link to a sheet begins with. */
export const LINK_MARK = '#s=';
