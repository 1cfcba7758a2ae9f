/** A part that is not made of markup, loaded once it is needed; null until it is there, and where it cannot be had. */
export function needed<Part>(
  load: () => Promise<Part>,
  isNeeded: () => boolean,
): { readonly current: Part | null } {
  let part = $state.raw<Part | null>(null);
  $effect(() => {
    if (isNeeded() && !part)
      load().then(
        (loaded) => (part = loaded),
        () => undefined,
      );
  });
  return {
    get current() {
      return part;
    },
  };
}
