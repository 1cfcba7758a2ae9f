/** A slower lap made from a measured one. */
import type { SpeedProfile } from './speed-profile.ts';

/**
 * The same lap driven with a share of its grip, and no faster than a cap.
 *
 * Where the share is p, speed is √p of the measured one: every acceleration along and across the road is p times as large.
 * Logged brakes keep their places: on and off where they were, shared between the axles as there; how hard they are pressed
 * follows from the slower motion.
 */
export function scaleProfile(profile: SpeedProfile, pace: number, cap_mps: number): SpeedProfile {
  if (pace === 1 && cap_mps === Infinity) return profile;
  const { distance_m } = profile;
  const speed_mps = profile.speed_mps.map((v) => Math.min(cap_mps, Math.sqrt(pace) * v));
  const n = speed_mps.length - 1;
  const time_s = new Float64Array(n + 1);
  const accel_mps2 = new Float64Array(n + 1);
  for (let i = 0; i < n; i++) {
    const ds = distance_m[i + 1]! - distance_m[i]!;
    time_s[i + 1] = time_s[i]! + ds / Math.max(0.1, (speed_mps[i]! + speed_mps[i + 1]!) / 2);
    accel_mps2[i] = ds > 0 ? (speed_mps[i + 1]! ** 2 - speed_mps[i]! ** 2) / (2 * ds) : 0;
  }
  accel_mps2[n] = accel_mps2[n - 1] ?? 0;
  return { ...profile, speed_mps, time_s, accel_mps2 };
}
