/** What a disc's kind, the shape of its vanes, their number and their thickness must agree in. */
import { CURVED_STRETCH, pillarsThatFit } from '../disc/vane-passage.ts';
import { problem, type Problem } from './problem.ts';
import type { Brake } from './schema.ts';

/** The first thing about a disc's vanes that cannot be; a solid disc's number and thickness of vanes are left alone. */
export function vaneProblems(key: string, disc: Brake['disc']): Problem[] {
  const found = disc.kind === 'solid' ? shapeOfSolid(disc) : (missing(disc) ?? crowded(disc));
  return found ? [problem(`${key}.disc.${found.field}`, disc[found.field], found.expected)] : [];
}

type Vanes = Pick<Brake['disc'], 'vane_shape' | 'vanes' | 'vane_mm' | 'inner_mm' | 'outer_mm'>;
interface Found {
  field: 'vane_shape' | 'vanes' | 'vane_mm';
  expected: string;
}

const shapeOfSolid = ({ vane_shape }: Vanes): Found | null =>
  vane_shape === 'none' ? null : { field: 'vane_shape', expected: 'none for a solid disc' };

function missing({ vane_shape, vanes, vane_mm }: Vanes): Found | null {
  if (vane_shape === 'none')
    return { field: 'vane_shape', expected: 'straight, curved or pillars for a vented disc' };
  if (vanes === 0) return { field: 'vanes', expected: 'above 0 for a vented disc' };
  return vane_mm > 0 ? null : { field: 'vane_mm', expected: 'above 0 for a vented disc' };
}

/** Vanes meet at the inner edge first, where a curved one leans and so takes more of it; pillars meet at their pitch. */
function crowded({ vane_shape, vanes, vane_mm, inner_mm, outer_mm }: Vanes): Found | null {
  if (vane_shape === 'pillars') {
    const most = pillarsThatFit({ outer_m: outer_mm, inner_m: inner_mm, vane_m: vane_mm });
    return vanes < most ? null : tooMany('fewer than fill the ring', most);
  }
  const stretch = vane_shape === 'curved' ? CURVED_STRETCH : 1;
  const most = (Math.PI * inner_mm) / (vane_mm * stretch);
  return vanes < most ? null : tooMany('fewer than fill the inner circumference', most);
}

const tooMany = (words: string, most: number): Found => ({
  field: 'vanes',
  expected: `${words}, ${Math.floor(most)}`,
});
