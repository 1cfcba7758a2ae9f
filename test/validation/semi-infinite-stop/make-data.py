"""Surface of a half-space under a flux that falls in a straight line to 0 at t_s. python3 make-data.py > data.csv

Duhamel's integral of the square-root law, by quadrature; rise times effusivity over q0 sqrt(t_s).
"""
import numpy as np
from scipy.integrate import quad
from scipy.optimize import minimize_scalar


def rise(share):
    # theta = sum over changes of flux: 2 sqrt((t - u)/pi) dq(u), q(0) = 1, dq = -du
    late = quad(lambda u: 2 * np.sqrt((share - u) / np.pi), 0, share)[0]
    return 2 * np.sqrt(share / np.pi) - late


found = minimize_scalar(lambda s: -rise(s), bounds=(0.1, 1), method="bounded", options={"xatol": 1e-10})
assert abs(-found.fun - 4 / (3 * np.sqrt(2 * np.pi))) < 1e-9
print("fourier,peak,peakShare,end")
for fourier in (0.06, 0.1, 0.15):
    print(f"{fourier},{-found.fun:.6f},{found.x:.5f},{rise(1):.6f}")
