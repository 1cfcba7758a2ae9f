/** Temperature across a cheek, from the rubbed face over its mean to the wall of the vanes: a parabola through the three. */
export const cheekProfile =
  ({ face_K, cheek_K, wall_K }: { face_K: number; cheek_K: number; wall_K: number }) =>
  (share: number): number => {
    const middle_K = 1.5 * cheek_K - 0.25 * (face_K + wall_K);
    return (
      face_K * (1 - share) * (1 - 2 * share) +
      4 * middle_K * share * (1 - share) +
      wall_K * share * (2 * share - 1)
    );
  };
