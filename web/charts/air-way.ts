/** The air's way through mouth, hose, vanes and leak as ribbons: as wide as what flows, on one scale for every stint. */
import type { MomentView } from './moment-view.ts';

export interface Ribbon {
  path: string;
  width: number;
  /** The arrow's head. */
  head: string;
}

export interface Flows {
  duct_kgps: number;
  vane_kgps: number;
  leak_kgps: number;
}

const PX_PER_KGPS = 120;
const LEAST_PX = 1.5;
/** Less than a hundredth of a gram a second is none. */
const NONE_KGPS = 1e-5;
const MOUTH = { left: 8, height: 76, taper: 30, hose: 48 };
const ABOVE_PX = 20;

export interface AirWay {
  duct: Ribbon | null;
  vanes: Ribbon | null;
  leak: Ribbon | null;
  /** Outline of mouth and hose, above and below. */
  walls: string;
  blank: { left: number; top: number; width: number; height: number } | null;
  names: { vanes: number; leak: { x: number; y: number }; duct: number };
}

/** @param blanked - covered share of the mouth, or null without a duct [-] */
export function airWay(view: MomentView, flows: Flows, blanked: number | null): AirWay {
  const { ring, gap, plenum, duct_y, scale } = view;
  const mouth = { left: MOUTH.left, taper: MOUTH.taper * scale, height: MOUTH.height * scale };
  const x = gap ? gap.left + gap.width / 2 : ring.left + ring.width / 2;
  const most = gap ? gap.width * 0.86 : 40 * scale;
  const widthOf = (kgps: number): number =>
    Math.abs(kgps) < NONE_KGPS ? 0 : Math.min(most, Math.max(LEAST_PX, Math.abs(kgps) * PX_PER_KGPS * scale));
  const ribbon = (kgps: number, path: string, head: [x: number, y: number, way: Way]): Ribbon | null => {
    const width = widthOf(kgps);
    return width === 0 ? null : { path, width, head: headPath(...head, width) };
  };
  const top = duct_y - mouth.height / 2;
  const opened_y = blanked === null ? duct_y : top + (mouth.height * (1 + blanked)) / 2;
  const start = mouth.left + mouth.taper;
  const from = plenum.left + plenum.width / 2;
  const isDrawn = flows.leak_kgps < 0;
  const leak_x = plenum.left + plenum.width - 6;
  const outlet = ring.top - ABOVE_PX;
  return {
    duct: ribbon(
      blanked === null ? 0 : flows.duct_kgps,
      `M${MOUTH.left - 6} ${opened_y}C${start} ${opened_y} ${MOUTH.left + 14} ${duct_y} ${start + 14} ${duct_y}H${from - 8}`,
      [from, duct_y, 'right'],
    ),
    vanes: gap
      ? ribbon(
          flows.vane_kgps,
          `M${from + 4} ${duct_y}H${x - 16}Q${x} ${duct_y} ${x} ${duct_y - 18}V${outlet}`,
          [x, outlet - 8, 'up'],
        )
      : null,
    leak: ribbon(
      flows.leak_kgps,
      `M${leak_x} ${duct_y - 12}V${ring.top + ring.height - 8}Q${leak_x} ${ring.top + ring.height - 26} ${leak_x - 22} ${ring.top + ring.height - 26}`,
      isDrawn ? [leak_x, duct_y - 6, 'down'] : [leak_x - 30, ring.top + ring.height - 26, 'left'],
    ),
    walls: blanked === null ? '' : wallsPath(plenum.left, duct_y, scale),
    blank: blanked === null ? null : { left: MOUTH.left - 5, top, width: 10, height: mouth.height * blanked },
    names: {
      vanes: x,
      leak: { x: leak_x - 38, y: ring.top + ring.height - 22 },
      duct: duct_y + mouth.height / 2 + 17,
    },
  };
}

function wallsPath(end: number, middle: number, scale: number): string {
  const wall = (way: 1 | -1): string =>
    `M${MOUTH.left} ${middle + (way * scale * MOUTH.height) / 2}L${MOUTH.left + scale * MOUTH.taper} ${middle + (way * scale * MOUTH.hose) / 2}H${end}`;
  return wall(-1) + wall(1);
}

type Way = 'right' | 'up' | 'left' | 'down';

/** A head wider than its ribbon, its tip at the given place. */
function headPath(x: number, y: number, way: Way, width: number): string {
  const half = width / 2 + 5;
  const long = Math.min(14, half + 3);
  const turned: Record<Way, string> = {
    right: `l${-long} ${-half}v${2 * half}z`,
    left: `l${long} ${-half}v${2 * half}z`,
    up: `l${-half} ${long}h${2 * half}z`,
    down: `l${-half} ${-long}h${2 * half}z`,
  };
  return `M${x} ${y}${turned[way]}`;
}
