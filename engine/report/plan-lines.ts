/** The plan of an event as a terminal shows it. */
import type { AxlePlanRecord, PlanRecord } from './plan-record.ts';

export function planLines({ name, conditions, axles, notices }: PlanRecord): string[] {
  const ambient = conditions.map(({ ambient_C }) => ambient_C);
  return [
    name,
    `${conditions.length} likely conditions, ${Math.min(...ambient)} to ${Math.max(...ambient)} °C; chances from the forecasts, every session counted alike`,
    ...Object.entries(axles).flatMap(([axle, plan]) => [
      '',
      axle,
      ...axleLines(plan).map((line) => `  ${line}`),
    ]),
    '',
    ...notices.map((text) => `note: ${text}`),
  ];
}

function axleLines({
  set,
  covered_pct,
  worst_K,
  rule,
  sessions,
  uncovered,
  regret,
}: AxlePlanRecord): string[] {
  const panels = set.map(({ letter, blanking_pct, sides_pct, step_K }) => {
    const covers = sides_pct
      ? Object.entries(sides_pct)
          .map(([side, pct]) => `${side} ${pct} %`)
          .join(', ')
      : `${blanking_pct} %`;
    return letter === 'open' ? letter : `${letter} ${covers} (+${step_K.toFixed(0)} K)`;
  });
  return [
    `bring  ${panels.join(', ')}`,
    `keeps ${covered_pct} % of the likely conditions in${worst_K === null ? '' : `, of these the worst by ${worst_K} K (weighed)`}`,
    ...rule.lines.map(({ fit, words }) => `fit ${fit}: ${words}`),
    `the rule keeps ${rule.covered_pct} % in and gives away ${rule.regret_K} K on average`,
    ...rule.missed.map(
      ({ condition, chance_pct, fit, best }) =>
        `the rule misses ${condition} (${chance_pct} %): it says ${fit}, ${best} would stay in`,
    ),
    ...uncovered.map(
      ({ condition, chance_pct, fit, words }) =>
        `not covered: ${condition} (${chance_pct} %), ${fit === 'open' ? 'open' : `with ${fit}`} ${words}`,
    ),
    ...sessions.flatMap(sessionLines),
    ...regretLines(regret),
  ];
}

function sessionLines({
  name,
  covered_pct,
  fits,
  beforeStop_pct,
}: AxlePlanRecord['sessions'][number]): string[] {
  const each = fits.map(({ fit, chance_pct }) => `${fit} ${chanceText(chance_pct)}`).join(', ');
  return [
    `${name}: ${each}; in the window ${covered_pct.toFixed(0)} %`,
    ...(beforeStop_pct === null
      ? []
      : [
          ...fits.map(({ fit, words }) => `  stop planned, where the rule says ${fit}: ${words}`),
          `  in the window until the stop ${beforeStop_pct.toFixed(0)} %`,
        ]),
  ];
}

const chanceText = (pct: number): string => (pct < 1 ? 'under 1 %' : `${pct.toFixed(0)} %`);

/** A row a day, a column a panel. */
function regretLines(regret: AxlePlanRecord['regret']): string[] {
  const head = ['the day turned out', ...(regret[0]?.fitted ?? []).map(({ fit }) => `fitted ${fit}`)];
  const rows = regret.map(({ day, fitted }) => [
    day,
    ...fitted.map(({ words, best }) => `${words}${best ? ' *' : ''}`),
  ]);
  const widths = head.map((title, i) => Math.max(title.length, ...rows.map((row) => row[i]!.length)));
  const line = (cells: string[]): string =>
    cells
      .map((cell, i) => cell.padEnd(widths[i]!))
      .join('  ')
      .trimEnd();
  return ['', line(head), ...rows.map(line), '* the best of the set'];
}
