/** What a duct's mouth, its blank and its tape must agree in. */
import { blankOf } from '../duct/blank-keys.ts';
import { leastBlanking } from '../duct/least-blanking.ts';
import { areaMouth } from '../duct/mouth-area.ts';
import { problem, type Problem } from './problem.ts';
import type { Brake } from './schema.ts';
import { tracedFault } from './traced-rules.ts';

type Duct = NonNullable<Brake['duct']>;

/** The first thing about a mouth that cannot be, and about its tape. */
export function mouthProblems(key: string, duct: Brake['duct']): Problem[] {
  if (!duct) return [];
  const found = shapeProblem(key, duct) ?? blankProblem(key, duct);
  return [found, tapeProblem(key, duct)].filter((each) => each !== null);
}

function shapeProblem(key: string, duct: Duct): Problem | null {
  const { mouth_shape, mouth_outline_mm, mouth_corner_mm, mouth_width_mm, mouth_height_mm } = duct;
  if (mouth_shape === 'outline') {
    const at = `${key}.mouth_outline_mm`;
    if (!mouth_outline_mm)
      return problem(at, mouth_outline_mm, 'at least 3 corners for a mouth of shape outline');
    const fault = tracedFault(mouth_outline_mm, areaMouth(duct));
    if (!fault) return null;
    const { corner, expected } = fault;
    return corner === null
      ? problem(at, mouth_outline_mm, expected)
      : problem(`${at}.${corner}`, mouth_outline_mm[corner], expected);
  }
  const most = Math.min(mouth_width_mm, mouth_height_mm) / 2;
  if (mouth_shape !== 'rounded rectangle' || mouth_corner_mm === undefined || mouth_corner_mm <= most)
    return null;
  return problem(`${key}.mouth_corner_mm`, mouth_corner_mm, `at most half the smaller side, ${most}`);
}

/** A plate in which no opening has room. */
function blankProblem(key: string, duct: Duct): Problem | null {
  const { kind, slots, hole_mm } = blankOf(duct);
  if (kind === 'edge' || leastBlanking(duct) < FULL_PCT) return null;
  switch (kind) {
    case 'slots':
      return problem(
        `${key}.blank_slots`,
        slots,
        'fewer: a rim of 4 mm and bars of 3 mm leave none of them room',
      );
    case 'perforated':
      return problem(`${key}.blank_hole_mm`, hole_mm, 'less: no hole is inside a rim of 4 mm');
    case 'hole':
      return problem(
        `${key}.blank`,
        kind,
        'edge or perforated: no hole of the mouth’s form is inside a rim of 4 mm',
      );
  }
}

/** From here on nothing is left open [%] */
export const FULL_PCT = 100 - 1e-9;

function tapeProblem(key: string, { strip_mm, strip_overlap_mm = 0 }: Duct): Problem | null {
  if (strip_overlap_mm < strip_mm) return null;
  return problem(`${key}.strip_overlap_mm`, strip_overlap_mm, `less than strip_mm, ${strip_mm}`);
}
