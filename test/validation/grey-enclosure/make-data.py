"""What a grey disc loses in a closed cylinder, by the full radiosity balance. python3 make-data.py > data.csv

Disc at one end, another disc at the other, the barrel around; other disc and barrel at one cooler temperature. View factors
between the ends by quadrature, the rest by reciprocity; three radiosities by a linear solve, reflections between all three.
"""
import sys
from pathlib import Path

import numpy as np

sys.path.insert(0, str(Path(__file__).parents[1] / "ring-view-factor"))
from importlib import import_module

view = import_module("make-data").view

print("radius,depth,emissivity,wheel,barrel,view,barrelRatio,effective")
for R, L, e1, e2, eb in ((0.2, 0.06, 0.5, 0.85, 0.85), (0.2, 0.06, 0.75, 0.6, 0.85), (0.2, 0.15, 0.75, 0.85, 0.6), (0.2, 0.06, 0.3, 0.5, 0.5)):
    F12 = view(0, R, R, L)
    ends, side = np.pi * R * R, 2 * np.pi * R * L
    F1b, Fb1 = 1 - F12, (1 - F12) * ends / side
    F = np.array([[0, F12, F1b], [F12, 0, F1b], [Fb1, Fb1, 1 - 2 * Fb1]])
    e, E = np.array([e1, e2, eb]), np.array([1.0, 0, 0])
    J = np.linalg.solve(np.eye(3) - (1 - e)[:, None] * F, e * E)
    effective = J[0] - F[0] @ J
    print(f"{R},{L},{e1},{e2},{eb},{F12:.8f},{ends / side:.8f},{effective:.6f}")
