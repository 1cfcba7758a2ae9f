/** What the page opens with: the sheet of the link that led to it, else the one that was kept, else the default. */
import type { Scenario } from '../../engine/index.ts';
import { defaultScenario } from '../../engine/scenario/default-scenario.ts';
import { loadChecks } from './checks.ts';
import { first, kept } from './first-run.ts';
import type { KeptSheet, Place } from './kept-storage.ts';
import { LINK_MARK } from './link-mark.ts';
import type { Linked } from './share-link.ts';

export interface Opening {
  /** Checked: what was kept may be of another version, and then the default stands here. */
  scenario: Scenario;
  /** Null where nothing was kept, undefined where the storage has not told. */
  kept: KeptSheet | null | undefined;
  /** What the link says that the page was opened by; null where it was by none. */
  link: Linked | null;
  place: Place | null;
}

export async function opening(): Promise<Opening> {
  const [{ scenario }, sheet, link] = await Promise.all([first, kept, linked()]);
  if (link?.ok) return { scenario: link.scenario, kept: sheet, link, place: null };
  const opened = sheet ? await checked(scenario) : scenario;
  return { scenario: opened, kept: sheet, link, place: sheet?.place ?? null };
}

async function checked(scenario: Scenario): Promise<Scenario> {
  const { checkScenario } = await loadChecks();
  return checkScenario(scenario).ok ? scenario : defaultScenario();
}

async function linked(): Promise<Linked | null> {
  const { hash } = location;
  if (!hash.startsWith(LINK_MARK)) return null;
  const reader = await import('./share-link.ts').catch(() => null);
  return (
    (await reader?.scenarioOf(hash)) ?? {
      ok: false,
      why: 'a part of the page that reads it could not be loaded',
    }
  );
}
