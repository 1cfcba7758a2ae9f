/**
 * The coefficients of the time stepping, and how a source that is a parabola over the step enters it.
 *
 *     (I − γΔtJ) K₁ = γ (Δt (F(H)      + s₁))
 *     (I − γΔtJ) K₂ = γ (Δt (F(H + K₁) + s₂) + c₂₁ K₁)
 *     (I − γΔtJ) K₃ = γ (Δt (F(H + K₁) + s₃) + c₃₁ K₁ + c₃₂ K₂)
 *     H ← H + m₁ K₁ + m₂ K₂ + m₃ K₃
 *
 * Third order, damped at infinity, two evaluations of F a step. Source: ROS3 of Sandu, Verwer, Blom, Spee, Carmichael & Potra,
 * Atmospheric Environment 31 (1997) 3459 (from memory; order and damping tested).
 */
const gamma = 0.435866521508459;
const c21 = -1.0156171083877703;
const c31 = 4.07599564525377;
const c32 = 9.20767942983308;
const m1 = 1;
const m2 = 6.1697947043828245;
const m3 = -0.42772256543218573;
/** γ of the second and the third stage for what depends on time alone; both are at the share γ of the step. */
const gamma2 = 0.24291996454816805;
const gamma3 = 2.185138002766406;
const w3 = gamma * m3;
const w2 = gamma * (m2 + c32 * w3);
const bendAtGamma = 1 - 6 * gamma + 6 * gamma * gamma;

export const ROS3 = {
  gamma,
  c21,
  c31,
  c32,
  m1,
  m2,
  m3,
  /** Weight of each stage's own F in the step, all that builds on it included. */
  w1: gamma * (m1 + c21 * w2 + c31 * w3),
  w2,
  w3,
  /** s of each stage = mean + rise · this + bend · that: a parabola (see `LapSteps`) at the stage's moment, and γ times its slope at the start. */
  rise1: gamma - 0.5,
  rise2: gamma + gamma2 - 0.5,
  rise3: gamma + gamma3 - 0.5,
  bend1: 1 - 6 * gamma,
  bend2: bendAtGamma - 6 * gamma2,
  bend3: bendAtGamma - 6 * gamma3,
} as const;
