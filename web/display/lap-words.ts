/** What the table says of a lap, and before it. */
import type { LapSummary, WindowLimits } from '../../engine/index.ts';
import { NBSP } from './format.ts';
import { isStand, type PhasePlan } from './phase-plan.ts';
import { phaseDetail, phaseName } from './phase-words.ts';

/** The verdict on one lap in words, with the limits it passed. */
export function lapVerdict(lap: LapSummary, window: WindowLimits): string {
  if (lap.in === null) return 'not counted';
  if (lap.in) return 'in';
  const passed = [
    lap.tooHot && lap.faceMax_K > window.facePeak_K ? 'too hot' : '',
    lap.bulkMax_K > window.bulk_K ? 'bulk too hot' : '',
    lap.tooCold && lap.belowBite > 0 ? 'too cold' : '',
    window.run_K !== null && lap.bulkMean_K < window.run_K ? 'mean too cold' : '',
  ].filter(Boolean);
  return `out: ${passed.join(', ')}`;
}

/** Lines that stand before a lap of a table: what a stop or a new phase changes there. Keyed by the lap. */
export function lapRemarks(plan: PhasePlan): Map<number, string[]> {
  const remarks = new Map<number, string[]>();
  for (const planned of plan) {
    const lap = planned.after + 1;
    const detail = phaseDetail(planned);
    const isLast = plan.slice(planned.index).every(({ laps }) => laps === 0);
    if (isStand(planned.phase) ? isLast : detail === '' || planned.laps === 0) continue;
    const line = isStand(planned.phase)
      ? `${phaseName(planned)} before this lap${detail && `: ${detail}`}`
      : `From lap${NBSP}${lap}: ${detail}`;
    remarks.set(lap, [...(remarks.get(lap) ?? []), line]);
  }
  return remarks;
}
