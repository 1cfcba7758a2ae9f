"""What an infrared sensor shows of a body whose emissivity is not the one set. python3 make-data.py > data.csv

Planck's law integrated over the band by quadrature; the shown temperature by root finding.
"""
import numpy as np
from scipy.constants import c, h, k
from scipy.integrate import quad
from scipy.optimize import brentq


def band(T, low_um, high_um):
    # substituted y = ln(lambda); scaled so that quad sees numbers near 1
    planck = lambda y: 2 * np.pi * h * c**2 / np.exp(y) ** 4 / np.expm1(h * c / (np.exp(y) * k * T))
    ends = np.log(np.array([low_um, high_um]) * 1e-6)
    size = max(planck(y) for y in np.linspace(*ends, 200))
    return size * quad(lambda y: planck(y) / size, *ends, epsabs=1e-13, epsrel=1e-12, limit=400)[0]


def shown(true, emissivity, reflected, set_to, low_um, high_um):
    B = lambda T: band(T, low_um, high_um)
    signal = emissivity * B(true) + (1 - emissivity) * B(reflected)
    return brentq(lambda T: np.log((set_to * B(T) + (1 - set_to) * B(reflected)) / signal), 100, 2500, xtol=1e-9)


print("true_K,emissivity,reflected_K,set,low_um,high_um,shown_K")
for body in ((773.15, 0.75, 303.15, 0.95), (873.15, 0.8, 303.15, 1.0), (673.15, 0.4, 303.15, 0.95), (473.15, 0.6, 353.15, 0.9)):
    for low, high in ((8, 14), (2, 2.6), (3.8, 4.0), (0.8, 1.1)):
        line = [*body, low, high]
        print(",".join(map(str, line)) + f",{shown(*line):.4f}")
