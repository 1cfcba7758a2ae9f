"""Where power meets drag and rolling resistance, by root finding. python3 make-data.py > data.csv"""
from scipy.optimize import brentq

print("power,efficiency,dragArea,rolling,mass,density,closed,driven")
for case in ((373000, 0.9, 0.95, 0.015, 1250, 1.2), (130000, 0.9, 0.68, 0.015, 1039, 1.15)):
    P, eta, cda, f, m, rho = case
    top = brentq(lambda v: P * eta - (0.5 * rho * cda * v * v + f * m * 9.80665) * v, 10, 200, xtol=1e-12)
    print(",".join(map(str, case)) + f",{top:.6f},{top:.6f}")
