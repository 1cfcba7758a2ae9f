"""View factor from a ring to a coaxial parallel disc, by its definition. python3 make-data.py

F = 1/A1 int int cos b1 cos b2 / (pi s^2) dA2 dA1 over both surfaces: a triple quadrature (one angle falls out by symmetry).
"""
import numpy as np


def gauss(low, high, points=80):
    x, w = np.polynomial.legendre.leggauss(points)
    return (high - low) / 2 * x + (high + low) / 2, (high - low) / 2 * w


def view(inner, outer, disc, distance):
    r1, w1 = gauss(inner, outer)
    r2, w2 = gauss(0, disc)
    angle, wa = gauss(0, np.pi, 200)
    R1, R2, A = np.meshgrid(r1, r2, angle, indexing="ij")
    s2 = R1**2 + R2**2 - 2 * R1 * R2 * np.cos(A) + distance**2
    kernel = distance**2 / (np.pi * s2**2) * R2 * 2
    per_ring = np.einsum("ijk,j,k->i", kernel, w2, wa)
    return float((per_ring * 2 * np.pi * r1 * w1).sum() / (np.pi * (outer**2 - inner**2)))


if __name__ == "__main__":
    for ring in ((0.10, 0.16, 0.2, 0.1), (0.128, 0.19, 0.23, 0.06), (0.1, 0.14, 0.19, 0.06), (0.05, 0.15, 0.15, 0.3)):
        print(",".join(map(str, ring)) + f",{view(*ring):.6f},")
