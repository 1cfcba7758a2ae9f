"""Surface of a half-space under a constant flux, rise times effusivity over q sqrt(t). python3 make-data.py > data.csv

The heat kernel of a half-space, integrated over the time since each bit of heat came in.
"""
import numpy as np
from scipy.integrate import quad

value = quad(lambda u: 1 / np.sqrt(np.pi * u), 0, 1)[0]
assert abs(value - 2 / np.sqrt(np.pi)) < 1e-9
print("fourier,surface")
for fourier in (0.02, 0.04, 0.06, 0.08, 0.1):
    print(f"{fourier},{value:.6f}")
