"""A slab 0..1 in dimensionless form, twice: as closed series and by finite volumes. The cases' make-data.py import it.

Time is Fo = alpha t / L^2, temperature is rise k / (q0 L). Heated at x = 0 by flux(Fo), insulated at x = 1.
"""
import numpy as np
from scipy.integrate import quad, solve_ivp
from scipy.optimize import brentq, minimize_scalar
from scipy.sparse import diags

TERMS = np.arange(1, 400)


def constant(Fo, x):
    """Carslaw & Jaeger, 2nd ed., section 3.8."""
    if Fo <= 0:
        return 0.0
    s = 1 - x
    waves = (-1.0) ** TERMS / TERMS**2 * np.exp(-((TERMS * np.pi) ** 2) * Fo) * np.cos(TERMS * np.pi * s)
    return Fo + (3 * s * s - 1) / 6 - 2 / np.pi**2 * waves.sum()


def falling(Fo, x, stop):
    """Flux falling in a straight line to 0 at Fo = stop, by Duhamel's integral."""
    spots = [Fo * share for share in (1e-4, 1e-3, 1e-2, 0.1)]
    area = quad(constant, 0, Fo, args=(x,), points=spots, limit=400, epsabs=1e-11)[0]
    return constant(Fo, x) - area / stop


def peak_of_falling(stop):
    """Highest rise of the heated face in a stop, and when, as a share of the stop."""
    found = minimize_scalar(lambda Fo: -falling(Fo, 0, stop), bounds=(0.2 * stop, stop), method="bounded", options={"xatol": 1e-9})
    return -found.fun, found.x / stop


def cooled(Fo, x, Bi):
    """Incropera & DeWitt, ch. 5.5: from 1, cooled at x = 0 by h L / k = Bi to 0; x = 1 is the insulated middle."""
    total = 0.0
    for n in range(60):
        z = brentq(lambda z: z * np.sin(z) - Bi * np.cos(z), n * np.pi + 1e-12, n * np.pi + np.pi / 2 - 1e-12)
        total += 4 * np.sin(z) / (2 * z + np.sin(2 * z)) * np.exp(-z * z * Fo) * np.cos(z * (1 - x))
    return total


def finite_volumes(Fo, flux=lambda t: 0.0, Bi=0.0, start=0.0, cells=400):
    """Faces x = 0 and x = 1 at the times Fo."""
    dx = 1 / cells
    main = np.full(cells, -2.0)
    main[0] = main[-1] = -1.0
    conduct = diags([np.ones(cells - 1), main, np.ones(cells - 1)], [-1, 0, 1], format="csc") / dx**2
    loss = 1 / (1 / Bi + dx / 2) if Bi > 0 else 0.0

    def slope(t, y):
        d = conduct @ y
        d[0] += (flux(t) - loss * y[0]) / dx
        return d

    jacobian = conduct.tolil()
    jacobian[0, 0] -= loss / dx
    Fo = np.atleast_1d(Fo)
    run = solve_ivp(slope, (0, Fo.max()), np.full(cells, start), "BDF", Fo, rtol=1e-8, atol=1e-10, jac=jacobian.tocsc())
    inward = np.array([flux(t) for t in Fo]) - loss * run.y[0]
    return run.y[0] + inward * dx / 2, run.y[-1]


def agree(series, volumes, within=2e-4):
    worst = np.abs(np.array(series) - volumes).max()
    assert worst < within, f"series and finite volumes differ by {worst}"
    print(f"# finite volumes agree within {worst:.0e}")
