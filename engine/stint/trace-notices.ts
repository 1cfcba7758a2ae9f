/** What a reader must know of the channels logged beside the speed: which were not used, and which were moved in time. */
import type { ChannelFinding, ChannelName } from '../circuit/channel-check.ts';
import type { Scenario } from '../scenario/schema.ts';
import { measuredLap } from './measured-lap.ts';
import type { Notice } from './result.ts';

const NAMES: Record<ChannelName, string> = {
  accel_mps2: 'the acceleration',
  brakeFront_Pa: 'front brake pressure',
  brakeRear_Pa: 'rear brake pressure',
};

export function traceNotices({ trace, car }: Pick<Scenario, 'trace' | 'car'>): Notice[] {
  if (!trace) return [];
  const { findings, used } = measuredLap({ trace, car });
  const lines = findings.filter(({ channel }) => channel !== 'accel_mps2');
  const left = lines.filter(({ leftOut }) => leftOut);
  const balance = left.length === 1 && lines.length === 2 ? '; the brake balance is the scenario’s' : '';
  // one that follows the speed on a wrong scale passes its test in time and is refused when it is to sharpen
  const isRefused = ({ channel, leftOut }: ChannelFinding): boolean =>
    channel === 'accel_mps2' && !leftOut && !used.accel;
  return findings
    .map((one): ChannelFinding => (isRefused(one) ? { ...one, leftOut: 'other motion' } : one))
    .filter(({ channel }) => channel !== 'accel_mps2' || !used.pressure)
    .map((finding) => said(finding, finding.channel === 'accel_mps2' ? '' : balance))
    .filter((text) => text !== '')
    .map((text) => ({ kind: 'trace', said: [`trace: ${text}`] }));
}

function said({ channel, late_s, leftOut }: ChannelFinding, balance: string): string {
  const name = NAMES[channel];
  const isPressure = channel !== 'accel_mps2';
  if (leftOut === 'flat') return `${name} never rises and is not used${balance}`;
  if (leftOut === 'other motion')
    return isPressure
      ? `${name} does not go with slowing down and is not used${balance}`
      : `${name} does not go with the speed and is not used; check its unit and sign`;
  if (leftOut === 'heat')
    return `${name} asks for other brake heat than the speed does and is not used${balance}; check that it works all lap`;
  if (late_s === 0) return '';
  const by = Math.abs(late_s).toFixed(2);
  const [comes, taken] = late_s > 0 ? ['after', 'earlier'] : ['before', 'later'];
  return `${name} comes ${by} s ${comes} the ${isPressure ? 'braking' : 'change of speed'}; taken as ${by} s ${taken}`;
}
