"""Efficiency of a straight fin between two walls of one temperature. python3 make-data.py > data.csv

T'' = 2 h T / (k t) from wall to wall, as a boundary-value problem; mean of T over T at the walls.
"""
import numpy as np
from scipy.integrate import solve_bvp

print("h,k,thickness,gap,efficiency")
for case in ((30, 50, 0.004, 0.014), (100, 45, 0.004, 0.017), (250, 40, 0.005, 0.02), (600, 30, 0.003, 0.025)):
    h, k, t, gap = case
    m2 = 2 * h / (k * t)
    slopes = lambda x, y: np.vstack([y[1], m2 * y[0], y[0]])
    ends = lambda a, b: np.array([a[0] - 1, b[0] - 1, a[2]])
    x = np.linspace(0, gap, 60)
    found = solve_bvp(slopes, ends, x, np.vstack([np.ones(60), np.zeros(60), x]), tol=1e-10)
    print(",".join(map(str, case)) + f",{found.sol(gap)[2] / gap:.7f}")
