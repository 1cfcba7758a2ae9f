"""Share of friction heat into each of two half-spaces that rub, by finite volumes. python3 make-data.py > data.csv

Both bodies in one mesh, fine at the contact, heated in the contact plane; the share is what one body holds after a second.
"""
import numpy as np
from scipy.integrate import solve_ivp
from scipy.sparse import diags

PAIRS = ((50, 7200, 500, 1.5, 2500, 1000), (43, 7850, 445, 12, 2500, 900), (25, 2400, 900, 5, 2800, 800))


def share(k1, rho1, c1, k2, rho2, c2, seconds=1.0, cells=300):
    widths = [np.geomspace(1, 200, cells) for _ in range(2)]
    reach = [8 * np.sqrt(k / (rho * c) * seconds) for k, rho, c in ((k1, rho1, c1), (k2, rho2, c2))]
    widths = [w / w.sum() * d for w, d in zip(widths, reach)]
    dx = np.concatenate([widths[0][::-1], widths[1]])
    k = np.concatenate([np.full(cells, k1), np.full(cells, k2)])
    capacity = dx * np.concatenate([np.full(cells, rho1 * c1), np.full(cells, rho2 * c2)])
    half = dx / (2 * k)
    link = 1 / (half[:-1] + half[1:])
    # heat enters at the contact: into both neighbouring cells as their half-resistances let it
    source = np.zeros(2 * cells)
    total = half[cells - 1] + half[cells]
    source[cells - 1], source[cells] = half[cells] / total, half[cells - 1] / total
    main = -np.concatenate([link, [0]]) - np.concatenate([[0], link])
    A = diags([link / capacity[1:], main / capacity, link / capacity[:-1]], [-1, 0, 1], format="csc")
    y = solve_ivp(lambda t, y: A @ y + source / capacity, (0, seconds), np.zeros(2 * cells), "BDF", jac=A, rtol=1e-8, atol=1e-12).y[:, -1]
    heat = y * capacity
    return heat[:cells].sum() / heat.sum()


print("k_d,rho_d,c_d,k_p,rho_p,c_p,share")
for pair in PAIRS:
    print(",".join(map(str, pair)) + f",{share(*pair):.5f}")
