"""Heat transfer of a disc that rotates in still air, from first principles. python3 make-data.py > data.csv

Laminar: von Karman's similarity equations of the flow (exact solution of Navier-Stokes) with the energy equation for a
disc of one temperature, solved as a boundary-value problem.
Turbulent: von Karman's momentum integrals (1921) with 1/7-power profiles and Blasius' friction, which give the torque
coefficient 0.146 Re^-0.2, and the energy integral with the same wall law for temperature (Reynolds analogy), which for a
rise that grows with r^2 gives back the analogy exactly. Prandtl's number by Chilton and Colburn, Pr^(1/3).
"""
import numpy as np
from scipy.integrate import quad, solve_bvp
from scipy.optimize import brentq, fsolve

PR = 0.71


def laminar():
    def slopes(_, y):
        F, dF, G, dG, H, T, dT = y
        return np.vstack([dF, F * F - G * G + dF * H, dG, 2 * F * G + H * dG, -2 * F, dT, PR * H * dT])

    def ends(a, b):
        return np.array([a[0], a[2] - 1, a[4], b[0], b[2], a[5] - 1, b[5]])

    z = np.linspace(0, 20, 400)
    guess = [0.5 * z * np.exp(-z), 0.5 * (1 - z) * np.exp(-z), np.exp(-0.6 * z), -0.6 * np.exp(-0.6 * z)]
    guess += [-0.88 * (1 - np.exp(-z)), np.exp(-0.3 * z), -0.3 * np.exp(-0.3 * z)]
    found = solve_bvp(slopes, ends, z, np.array(guess), tol=1e-9, max_nodes=200000)
    return -found.sol(0)[6]


def turbulent():
    area = lambda f, top=1: quad(f, 0, top, epsabs=1e-12)[0]
    radial = lambda s: s ** (1 / 7) * (1 - s)
    around = lambda s: 1 - s ** (1 / 7)
    shear = lambda a, b: 0.0225 * (1 + a * a) ** (3 / 8) * b**-0.25  # tau / rho (omega r)^2 Re_r^-0.2
    rr, pp, rp = area(lambda s: radial(s) ** 2), area(lambda s: around(s) ** 2), area(lambda s: radial(s) * around(s))

    def balances(u):
        a, b = u  # radial speed over omega r; thickness over r Re_r^-0.2
        return 3.6 * a * a * b * rr - b * pp + a * shear(a, b), 4.6 * a * b * rp - shear(a, b)

    a, b = fsolve(balances, (0.16, 0.5))
    tau = shear(a, b)

    def carried_less_given(D):  # D: thickness of the warm layer over that of the moving one
        carried = area(lambda s: radial(s) * (1 - (s / D) ** (1 / 7)), min(D, 1)) * a * b
        return 2.6 * carried - tau / D ** (1 / 7)

    local = tau / brentq(carried_less_given, 0.05, 20) ** (1 / 7)
    print(f"# torque coefficient {8 * np.pi * tau / 4.6:.4f} Re^-0.2, radial speed {a:.4f}, thickness {b:.4f}")
    return local * 2 / 2.6 * PR ** (1 / 3)


lam, turb = laminar(), turbulent()
print(f"# laminar {lam:.6f} Re^0.5, turbulent {turb:.6f} Re^0.8, Pr {PR}")
print("Re,laminar,turbulent")
for Re in (1e3, 1e4, 1e5):
    print(f"{Re:.0f},{lam * Re**0.5:.4f},")
for Re in (3e6, 1e7, 1e8):
    print(f"{Re:.0f},,{turb * Re**0.8:.2f}")
