import { readFile } from 'node:fs/promises';
import type { Locator, Page } from '@playwright/test';
import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { readCutDxf } from '../support/read-cut-dxf.ts';
import { readCutSvg, type Polygon } from '../support/read-cut-svg.ts';
import { axe } from './axe.ts';
import { withoutFileAccess } from './files.ts';
import { expect, test } from './fixtures.ts';

async function openCut(page: Page): Promise<void> {
  await page.goto('/#cut');
  await expect(sheetsOf(page).first()).toBeVisible();
}
const sheetsOf = (page: Page): Locator => page.locator('.cut-sheets article');
const field = (page: Page, name: string): Locator => page.getByRole('spinbutton', { name: `${name}, typed` });

async function savedBy(page: Page, button: string): Promise<{ name: string; text: string }> {
  const saving = page.waitForEvent('download');
  await page.getByRole('button', { name: button }).first().click();
  const download = await saving;
  return { name: download.suggestedFilename(), text: await readFile(await download.path(), 'utf8') };
}

/** Area of a polygon, by the shoelace formula. */
const area = (polygon: Polygon): number =>
  Math.abs(
    polygon.reduce((sum, { x, y }, i) => {
      const next = polygon[(i + 1) % polygon.length]!;
      return sum + x * next.y - next.x * y;
    }, 0) / 2,
  );

test('one blanking is drawn and saved as SVG and DXF of the area that it says', async ({ page }) => {
  await withoutFileAccess(page);
  await openCut(page);
  await page.getByRole('radio', { name: 'Left' }).check();
  await page.getByRole('radio', { name: 'One blanking' }).check();
  await field(page, 'Blanking to cut').fill('60');
  await field(page, 'Blanking to cut').press('Enter');
  await page.getByRole('radio', { name: 'holes', exact: true }).check();
  await expect(page.locator('.paper')).toHaveCount(1);
  await expect(page.locator('.paper')).toHaveText(/X\s+60 %\s+front left/);
  const svg = await savedBy(page, 'Save SVG');
  const dxf = await savedBy(page, 'Save DXF');
  expect(svg.name).toMatch(/^panels-front-.*-1-of-1\.svg$/);
  expect(dxf.name).toMatch(/\.dxf$/);
  const cutsIn = (strokes: { layer: string; polygon: Polygon }[]): number[] =>
    strokes
      .filter(({ layer }) => layer === 'CUT')
      .map(({ polygon }) => area(polygon))
      .sort((a, b) => b - a);
  const [fromSvg, fromDxf] = [cutsIn(readCutSvg(svg.text).strokes), cutsIn(readCutDxf(dxf.text).strokes)];
  expect(fromDxf).toHaveLength(fromSvg.length);
  // the pull tab stands out of the mouth of 110 x 100 mm, of which 60 % are 6600 mm²
  const pull_mm2 = fromSvg[0]! - 6600;
  expect(pull_mm2).toBeGreaterThan(0);
  expect(pull_mm2).toBeLessThan(28 * 24);
  expect(fromDxf[0]! / fromSvg[0]!).toBeCloseTo(1, 4);
  expect(svg.text).toContain('Not for use on a car');
  expect(dxf.text).toContain('Not for use on a car');
});

/** Lengths of the straight lines of a PDF's first page in mm, as they stand on paper. */
async function linesOn(pdf: Buffer): Promise<{ pages: number; across: number[]; up: number[] }> {
  const document = await getDocument({ data: new Uint8Array(pdf), verbosity: 0 }).promise;
  const page = await document.getPage(1);
  const { fnArray, argsArray } = await page.getOperatorList();
  const across: number[] = [];
  const up: number[] = [];
  let at = [1, 0, 0, 1, 0, 0];
  const kept: number[][] = [];
  fnArray.forEach((operator, i) => {
    const args = argsArray[i] as unknown[];
    if (operator === OPS.save) kept.push(at);
    else if (operator === OPS.restore) at = kept.pop() ?? at;
    else if (operator === OPS.transform) at = times(at, args as number[]);
    else if (operator === OPS.constructPath) {
      const mm = 25.4 / 72;
      const [left, bottom, right, top] = boxIn(args);
      across.push(Math.abs(at[0]! * (right! - left!) + at[2]! * (top! - bottom!)) * mm);
      up.push(Math.abs(at[1]! * (right! - left!) + at[3]! * (top! - bottom!)) * mm);
    }
  });
  return { pages: document.numPages, across, up };
}
const times = ([a, b, c, d, e, f]: number[], [p, q, r, s, t, u]: number[]): number[] => [
  a! * p! + c! * q!,
  b! * p! + d! * q!,
  a! * r! + c! * s!,
  b! * r! + d! * s!,
  a! * t! + c! * u! + e!,
  b! * t! + d! * u! + f!,
];
/** What pdf.js tells of a path is its operation, its points and the box around it. */
const boxIn = (args: unknown[]): number[] => Array.from(args.at(-1) as ArrayLike<number>);

test('the rulers measure 100 mm in the PDF that is printed, corrected by what was measured, and beyond 3 % that is refused', async ({
  page,
}) => {
  await openCut(page);
  await page.evaluate(() => (document.documentElement.dataset['theme'] = 'night'));
  const print = async () => linesOn(await page.pdf({ preferCSSPageSize: true }));
  const shown = await sheetsOf(page).count();
  const true100 = (mm: number): boolean => Math.abs(mm - 100) <= 0.1;
  const first = await print();
  expect(first.pages).toBe(shown);
  // one path is both rulers: as wide as it is high
  expect(first.across.filter((mm, i) => true100(mm) && true100(first.up[i]!))).toHaveLength(1);

  await field(page, 'Ruler across').fill('95');
  await field(page, 'Ruler across').press('Enter');
  await expect(page.getByText(/Expected 97 to 103\smm \(a printer further off is set wrong/)).toBeVisible();
  await expect(field(page, 'Ruler across')).toHaveValue(/^100\smm$/);
  await field(page, 'Ruler across').fill('98');
  await field(page, 'Ruler across').press('Enter');
  await expect(page.locator('.paper').first()).toContainText('CORRECTED');
  const second = await print();
  expect(second.across.some((mm, i) => Math.abs(mm - 10000 / 98) <= 0.1 && true100(second.up[i]!))).toBe(
    true,
  );

  await page.reload();
  await expect(page.locator('.paper').first()).toContainText('CORRECTED');
});

test('by keyboard alone a round mouth is chosen, undone and gone from; axe finds nothing, nothing is wider than 320 pixels', async ({
  page,
}) => {
  await page.setViewportSize({ width: 320, height: 700 });
  await openCut(page);
  await expect(page.getByRole('heading', { level: 1 })).toBeFocused();
  expect((await axe(page).analyze()).violations).toEqual([]);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(320);
  const mouth = page.getByRole('combobox', { name: 'Mouth', exact: true });
  await mouth.focus();
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('ArrowDown');
  await expect(mouth).toHaveValue('round');
  await expect(page.locator('.paper').first()).toContainText('fits mouth round');
  await page.keyboard.press('Control+z');
  await expect(mouth).toHaveValue('rounded rectangle');
  await page.getByRole('checkbox', { name: /^B/ }).focus();
  await page.keyboard.press('Space');
  await expect(page.locator('.paper').first()).not.toContainText('B  40 %');
  await page.getByRole('link', { name: 'Stint', exact: true }).focus();
  await page.keyboard.press('Enter');
  await expect(page.locator('.sentence').getByRole('status')).toContainText(/Front/);
});
