import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';

/** Tells of violations alone: what passes is most of what an analysis takes. */
export const axe = (page: Page): AxeBuilder =>
  new AxeBuilder({ page }).options({ resultTypes: ['violations'] });
