/** From the command to search until the safe span of both axles is there, in the built page's second worker. */
import { defaultScenario } from '../../engine/scenario/library.ts';
import { withChanges } from '../../engine/scenario/changes.ts';
import { withBuiltPage } from './built-page.ts';
import { rowOf, type Row } from './rows.ts';

export async function spans(): Promise<Row[]> {
  const scenarios = Array.from({ length: 12 }, (_, i) =>
    withChanges(defaultScenario(), { 'conditions.ambient_C': 10 + i }),
  );
  const times = await withBuiltPage((page, { scriptOf }) =>
    page.evaluate(
      async ({ script, scenarios: asked }) => {
        const worker = new Worker(`./assets/${script}`, { type: 'module' });
        const took: number[] = [];
        for (const [i, scenario] of asked.entries()) {
          const start_ms = performance.now();
          const argumentList = [{ type: 'RAW', value: { scenario, driven: null } }];
          const reply = new Promise((resolve) => (worker.onmessage = resolve));
          worker.postMessage({ id: String(i), type: 'APPLY', path: ['findSpans'], argumentList });
          await reply;
          took.push(performance.now() - start_ms);
        }
        worker.terminate();
        return took.slice(2);
      },
      { script: scriptOf('worker'), scenarios },
    ),
  );
  return [rowOf('safe span of both axles, second worker', times, { unit: 'ms' })];
}
