"""The speed at which a circle needs all the grip, by root finding on the balance of forces. python3 make-data.py > data.csv"""
from scipy.optimize import brentq

G = 9.80665
print("grip,radius,mass,density,downforceArea,speed")
for case in ((1.4, 50, 1250, 1.2, 0), (1.6, 30, 1250, 1.2, 0), (1.5, 100, 1250, 1.2, 2), (1.15, 180, 1040, 1.1, 0.15), (1.6, 60, 900, 1.2, 3.5)):
    mu, R, m, rho, cla = case
    spare = lambda v: mu * (m * G + 0.5 * rho * cla * v * v) - m * v * v / R
    print(",".join(map(str, case)) + f",{brentq(spare, 1, 150, xtol=1e-12):.7f}")
