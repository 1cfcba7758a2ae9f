"""The reference stint by solve_ivp (LSODA) with a vectorised right-hand side: what one would write in Python.

Usage: python3 with_scipy.py problem.json; then each line of the input is a relative tolerance, each line of the output a
solution as JSON: the time it took and the temperatures of all nodes at the moments asked for.
The state is the enthalpy of every node of both corners, as in engine/disc/rates.ts; every array has a column a corner, and
for a Jacobian a column a corner and node, so that one call finds it. LSODA begins anew where the pads come on or off.
"""

import json
import sys
import time
from bisect import bisect_right

import numpy as np
from scipy.integrate import solve_ivp

SURFACES = ("face", "vane", "rim", "bell", "caliper")
WALL_LOW_K, WALL_STEP_K, WALLS = 250.0, 50.0, 26
SPRAY_SCALE_K = 80.0

problem = json.load(open(sys.argv[1]))
node, nodes, corners = problem["node"], problem["nodes"], problem["corners"]
count = len(corners)
child = np.array([i for i in range(nodes) if problem["parent"][i] >= 0])
parent = np.array(problem["parent"])[child]
RIM, BELL, CALIPER, PAD_FACE, FACE, WALL = (node[n] for n in ("rim", "bell", "caliper", "padFace", "face", "wall"))
surface = np.array([FACE, WALL, RIM, BELL, CALIPER])
cast = np.array(problem["cast"])[child][:, None]
# moves each link's flux out of the child and into the parent, and each surface's heat out of its node
links = np.arange(len(child))
flow = np.zeros((nodes, len(child)))
flow[child, links] = -1
flow[parent, links] += 1
out = np.zeros((nodes, 5))
out[surface, np.arange(5)] = -1


def of_corners(name):
    """A number or a list of each corner, the corners side by side in the last axis."""
    return np.moveaxis(np.array([corner[name] for corner in corners]), 0, -1)


class Columns:
    """What each column of the state needs, for `copies` columns a corner."""

    def __init__(self, copies):
        wide = lambda array: np.repeat(array, copies, axis=-1)
        self.corner = np.repeat(np.arange(count), copies)
        size = len(corners[0]["temperature_K"])
        self.start = wide(of_corners("offset") + size * np.arange(count))
        self.per_joule = wide(of_corners("entriesPerJoule"))
        self.radiation = wide(of_corners("radiation"))
        self.bridge = wide(of_corners("bridge_WpK4"))
        self.hub = wide(of_corners("hub_WpK"))
        self.mount = wide(of_corners("mount_WpK"))
        share = of_corners("discShare")
        self.to_disc, self.to_pad = wide(share), wide(1 - share)
        self.drag = wide(of_corners("drag_N"))
        apart = wide(of_corners("link"))
        pressed = apart.copy()
        pressed[PAD_FACE] = wide(of_corners("pressed_WpK"))
        self.links = {False: apart[child], True: pressed[child]}
        self.shares = wide(of_corners("shares"))


T_TABLE = np.concatenate([corner["temperature_K"] for corner in corners])
P_TABLE = np.concatenate([corner["potential"] for corner in corners])
# the last entry that has one after it
LAST = len(corners[0]["temperature_K"]) // len(set(corners[0]["offset"])) - 2
BOTH = np.stack([T_TABLE, P_TABLE])
CLIMB = np.diff(BOTH, append=0)


def maps_of(leg):
    """Grids of one leg: conductances [speed, surface, corner, wall] and what goes with speed alone [speed, row, corner]."""
    maps = [corner["maps"][leg] for corner in corners]
    grids = np.array([[np.reshape(m[s], (-1, WALLS)) for m in maps] for s in SURFACES])
    rows = np.array([[m[r] for m in maps] for r in ("wheelhouse", "recirculated", "sprayFace_W", "sprayVane_W", "air_K")])
    alone = np.array([[m[r] for m in maps] for r in ("faceInWheelhouse", "wheelhouseBuoyant", "radiationKept")])
    return np.moveaxis(grids, 2, 0), np.moveaxis(rows, 2, 0), alone, maps[0]["speedStep_mps"]


LEGS = [maps_of(leg) for leg in range(len(corners[0]["maps"]))]
FIVE = np.arange(5)[:, None]


def rates(H, speed, power, stage, columns):
    """Heat gained by each node [W], one column of H a column."""
    grids, rows, alone, step = LEGS[stage["leg"]]
    at = speed / step
    i = min(int(at), len(grids) - 2)
    w = at - i
    grid = grids[i] + w * (grids[i + 1] - grids[i])
    corner = columns.corner
    driven, drawn, wet_face, wet_wall, ambient = (rows[i] + w * (rows[i + 1] - rows[i]))[:, corner]
    on_face, buoyant, kept = alone[:, corner]

    at = np.maximum(H * columns.per_joule, 0)
    cell = np.minimum(at.astype(np.int64), LAST)
    entry = columns.start + cell
    T, P = BOTH[:, entry] + (at - cell) * CLIMB[:, entry]

    drop = np.where(cast, P[child] - P[parent], T[child] - T[parent])
    F = flow @ (columns.links[stage["pressed"]] * drop)

    hot = T[surface]
    at = np.maximum((hot - WALL_LOW_K) / WALL_STEP_K, 0)
    j = np.minimum(at.astype(np.int64), WALLS - 2)
    low = grid[FIVE, corner, j]
    G = low + (at - j) * (grid[FIVE, corner, j + 1] - low)
    hot4 = hot**4
    radiated = columns.radiation * (hot4 - ambient**4)
    rise = hot - ambient
    meets = np.ones_like(G)
    meets[0], meets[1] = on_face, drawn
    offered = (G * rise).sum(0) + kept * radiated.sum(0)
    warmth = wheelhouse(offered, (G * meets).sum(0), driven * driven, buoyant * buoyant)
    taken = G * (rise - meets * warmth) + radiated
    if wet_face.any() or wet_wall.any():
        taken[0] += wet_face * np.tanh(np.maximum(rise[0], 0) / SPRAY_SCALE_K)
        taken[1] += wet_wall * np.tanh(np.maximum(rise[1], 0) / SPRAY_SCALE_K)
    taken[3] += columns.hub * rise[3]
    taken[4] += columns.mount * rise[4]
    across = columns.bridge * (hot4[2] - hot4[4])
    taken[2] += across
    taken[4] -= across
    F += out @ taken
    friction = columns.shares[stage["leg"]] * power + columns.drag * speed
    F[FACE] += columns.to_disc * friction
    F[PAD_FACE] += columns.to_pad * friction
    return F


def wheelhouse(heat, held, driven2, buoyant2):
    """Warmth of the wheelhouse, as riseWheelhouse in engine/disc/wheelhouse.ts."""
    rise = heat / (held + np.sqrt(driven2 + 64 * buoyant2))
    for _ in range(3):
        warm = np.sqrt(rise * rise + 1)
        carried = np.sqrt(driven2 + buoyant2 * warm)
        growth = carried + held + buoyant2 * rise * rise / (2 * carried * warm)
        rise -= (rise * (carried + held) - heat) / growth
    return rise


ALONE, TOGETHER = Columns(1), Columns(nodes + 1)
# heat from one entry of the tables to the next [J]
ENTRY_J = 1 / of_corners("entriesPerJoule")
# the absolute tolerance is the relative one of so many entries of the tables, some 250 K
ABSOLUTE = 100
# moments closer than this are one [s]
SAME_S = 1e-7


def drive(stage, t):
    """Speed [m/s] and power of all brakes [W] at a moment."""
    i = max(bisect_right(stage["begin_s"], t) - 1, 0)
    tau = t - stage["begin_s"][i]
    return stage["v0"][i] + stage["v1"][i] * tau, stage["p0"][i] + tau * (stage["p1"][i] + tau * stage["p2"][i])


def jacobian_of(stage, t, y):
    """By differences, all nodes of all corners moved in one call."""
    moved = np.repeat(y.reshape(nodes, count), nodes + 1, axis=1).reshape(nodes, count, nodes + 1)
    small = 1e-4 * ENTRY_J
    moved[np.arange(nodes), :, np.arange(nodes) + 1] += small
    F = rates(moved.reshape(nodes, -1), *drive(stage, t), stage, TOGETHER).reshape(moved.shape)
    J = np.zeros((nodes, count, nodes, count))
    for c in range(count):
        J[:, c, :, c] = (F[:, c, 1:] - F[:, c, :1]) / small[:, c]
    return J.reshape(nodes * count, nodes * count)


def solve(wanted, tolerance):
    """Enthalpies at the moments wanted, from the begin of the stint."""
    y = of_corners("start_J").ravel()
    absolute = (tolerance * ABSOLUTE * ENTRY_J).ravel()
    told, first = [y], 1
    for stage in problem["stages"]:
        end = stage["to_s"]
        last = int(np.searchsorted(wanted, end + SAME_S))
        inside = wanted[first : int(np.searchsorted(wanted, end - SAME_S))]
        found = solve_ivp(
            lambda t, y: rates(y.reshape(nodes, count), *drive(stage, t), stage, ALONE).ravel(),
            (stage["from_s"], end),
            y,
            method="LSODA",
            jac=lambda t, y: jacobian_of(stage, t, y),
            t_eval=np.append(inside, end),
            rtol=tolerance,
            atol=absolute,
        )
        if not found.success:
            raise RuntimeError(found.message)
        told.extend(found.y.T[: last - first])
        y, first = found.y[:, -1], last
    return np.array(told).reshape(-1, nodes, count)


def temperatures(H):
    at = H * ALONE.per_joule
    cell = np.clip(at.astype(np.int64), 0, LAST)
    entry = ALONE.start + cell
    return T_TABLE[entry] + (at - cell) * CLIMB[0][entry]


def main():
    wanted = np.array(problem["sample_s"])
    for line in sys.stdin:
        begin = time.perf_counter()
        H = solve(wanted, float(line))
        took = 1000 * (time.perf_counter() - begin)
        print(json.dumps({"took_ms": took, "T": temperatures(H).transpose(2, 1, 0).tolist()}), flush=True)


main()
