/** What of a worker tells that it has broken. */
type Breakable = Pick<Worker, 'onerror' | 'onmessageerror'>;

/** What is asked of a worker, or a rejection when it breaks. A race against one promise would keep all that ever ran in it. */
export function breaking(worker: Breakable): <P extends Promise<unknown>>(asked: P) => Promise<Awaited<P>> {
  const waiting = new Set<(cause: Error) => void>();
  let broken: Error | null = null;
  const breakWith = (message: string): void => {
    broken = new Error(message);
    for (const reject of waiting) reject(broken);
  };
  worker.onerror = (event) => {
    event.preventDefault();
    breakWith(event.message || 'it could not be started');
  };
  worker.onmessageerror = () => breakWith('its answer could not be read');
  return <P extends Promise<unknown>>(asked: P) =>
    new Promise<Awaited<P>>((resolve, reject) => {
      if (broken) return reject(broken);
      waiting.add(reject);
      asked.then((answer) => resolve(answer as Awaited<P>), reject).finally(() => waiting.delete(reject));
    });
}
