"""Flows and pressure of a node between a duct, a rotor's passages and a leak. python3 make-data.py > data.csv

Bernoulli with losses along each way, solved for the node's pressure by bisection on the sum of the flows.
"""
import numpy as np
from scipy.optimize import brentq

RHO, HOSE = 1.15, np.pi / 4 * 0.076**2
ALONG = 0.05 * 1.4 / 0.076 + 0.6  # friction and bends, no exit
VANES, VANES_K, LEAK, LEAK_K = 0.0030, 2.0, 0.0006, 2.7


def flow(area, K, drop, rho=RHO):
    return np.sign(drop) * area * np.sqrt(2 * rho * abs(drop) / K)


def node(open_share, speed, rpm, rho_in):
    q = 0.5 * RHO * speed**2
    ram, out = 0.9 * q, -0.15 * q
    pump = 0.35 * 0.5 * RHO * (rpm * 2 * np.pi / 60) ** 2 * (0.165**2 - 0.100**2)
    K = ((1.707 - open_share) / open_share) ** 2 + ALONG
    leak = lambda p: flow(LEAK, LEAK_K, p - out, RHO if p > out else rho_in)
    surplus = lambda p: flow(HOSE, K, ram - p) - flow(VANES, VANES_K, p - out + pump) - leak(p)
    p = brentq(surplus, -5000, 5000, xtol=1e-12, rtol=1e-14)
    return p, flow(HOSE, K, ram - p), flow(VANES, VANES_K, p - out + pump), leak(p)


print("open,speed,rpm,wheelhouse,plenum,duct,vanes,leak")
for case in ((1, 50, 1200, RHO), (0.5, 50, 1200, RHO), (0.25, 50, 1200, RHO), (0.1, 50, 1200, 0.8), (0.25, 15, 1500, 0.8)):
    print(",".join(f"{value:.9g}" for value in (*case, *node(*case))))
