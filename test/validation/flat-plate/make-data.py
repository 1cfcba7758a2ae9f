"""Mean Nusselt number of a flat plate in laminar flow. python3 make-data.py > data.csv

Blasius' boundary layer and the energy equation of a plate of one temperature, solved as one boundary-value problem:
f''' + f f''/2 = 0, T'' + Pr f T'/2 = 0. Mean = 2 x local at the end: Nu = -2 T'(0) Re^0.5.
"""
import numpy as np
from scipy.integrate import solve_bvp


def coefficient(Pr):
    slopes = lambda _, y: np.vstack([y[1], y[2], -y[0] * y[2] / 2, y[4], -Pr * y[0] * y[4] / 2])
    ends = lambda a, b: np.array([a[0], a[1], b[1] - 1, a[3] - 1, b[3]])
    z = np.linspace(0, 12, 300)
    rise = 1 - np.exp(-z / 2)
    guess = np.array([z - 2 * rise, rise, np.exp(-z / 2) / 2, 1 - rise, -np.exp(-z / 2) / 2])
    return -2 * solve_bvp(slopes, ends, z, guess, tol=1e-9, max_nodes=100000).sol(0)[4]


print("Re,Pr,nusselt")
for Pr in (0.68, 0.7, 0.72):
    for Re in (2e4, 1e5, 4e5):
        print(f"{Re:.0f},{Pr},{coefficient(Pr) * Re**0.5:.3f}")
