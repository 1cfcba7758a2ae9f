/** Storage that does not answer counts as denied [ms] */
const PATIENCE_MS = 2_000;

/** What comes of asking the browser's storage, which may never answer. */
export async function inTime<T>(act: () => Promise<T>, patience_ms = PATIENCE_MS): Promise<T> {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const late = new Promise<never>((_, reject) => {
    timer = setTimeout(() => reject(new Error('the storage gave no answer')), patience_ms);
  });
  try {
    return await Promise.race([act(), late]);
  } finally {
    clearTimeout(timer);
  }
}
