"""Braking at the limit of grip, Newton's second law integrated in time. python3 make-data.py > data.csv"""
from scipy.integrate import solve_ivp

G = 9.80665
print("grip,mass,density,dragArea,downforceArea,from,to,distance,time,hardDistance,hardTime")
for case in ((1.4, 1250, 1.2, 0, 0, 70, 20), (1.4, 1250, 1.2, 0.95, 2, 70, 20), (1.15, 1040, 1.1, 0.68, 0.15, 55, 12), (1.6, 900, 1.2, 1.2, 3.5, 85, 30)):
    mu, m, rho, cda, cla, fast, slow = case
    decel = lambda v: mu * (G + 0.5 * rho * cla * v * v / m) + 0.5 * rho * cda * v * v / m
    stopped = lambda t, y: y[1] - slow
    stopped.terminal = True
    run = solve_ivp(lambda t, y: [y[1], -decel(y[1])], (0, 60), [0, fast], events=stopped, rtol=1e-11, atol=1e-11)
    found = f"{run.y_events[0][0][0]:.5f},{run.t_events[0][0]:.6f}"
    print(",".join(map(str, case)) + ("," + found + ",," if cla < 3 else ",,," + found))
