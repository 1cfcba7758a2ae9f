/** What makes a drawing one that keys move the cursor on: a name, a summary elsewhere on the page, and what its ends are. */
export const inHand = (name: string, summary: string, extent: 'lap' | 'stint') => ({
  role: 'application',
  tabindex: 0,
  'aria-roledescription': 'chart',
  'aria-label': name,
  'aria-describedby': `${summary}-summary cursor-keys`,
  'data-extent': extent,
});
