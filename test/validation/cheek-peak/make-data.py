"""Highest temperature of a cheek in one stop, and when. python3 make-data.py > data.csv"""
import sys
from pathlib import Path

import numpy as np

sys.path.insert(0, str(Path(__file__).parents[1]))
from slab import finite_volumes, peak_of_falling

ALPHA = 50 / (7200 * 500)  # k 50, rho 7200, c 500
print("cheek_mm,stop_s,fourier,peak,peakShare")
for cheek_mm, stop_s in ((6, 4), (8, 2), (8, 4), (10, 4), (16, 4)):
    stop = ALPHA * stop_s / (cheek_mm / 1000) ** 2
    peak, share = peak_of_falling(stop)
    times = np.linspace(0.3, 1, 701) * stop
    trace = finite_volumes(times, flux=lambda t: 1 - t / stop)[0]
    assert abs(trace.max() - peak) < 2e-4 and abs(times[trace.argmax()] / stop - share) < 3e-3
    print(f"{cheek_mm},{stop_s},{stop:.6f},{peak:.6f},{share:.4f}")
