"""Energy of a stop at constant deceleration: force times speed, integrated in time. python3 make-data.py > data.csv"""
from scipy.integrate import quad

G = 9.80665
names = "mass,factor,from,to,decelerationG,density,dragArea,rolling,slip,balance,discShare,discMass,discHeat"
print(names + ",distance,time,energyAtBrakes,energyInDisc,discRise")
for case in (
    (1300, 1.05, 70, 25, 1.4, 1.2, 0.85, 0.015, 0.05, 0.62, 0.95, 9.5, 520),
    (1039, 1.06, 55, 15, 1.0, 1.15, 0.68, 0.015, 0.05, 0.7, 0.97, 6.2, 540),
    (1372.5, 1.05, 78, 20, 1.8, 1.1522, 1.05, 0.015, 0.06, 0.58, 0.96, 9.8, 600),
):
    m, factor, fast, slow, decel, rho, cda, f, slip, balance, share, disc, c = case
    a = decel * G
    time = (fast - slow) / a
    speed = lambda t: fast - a * t
    force = lambda v: factor * m * a - 0.5 * rho * cda * v * v - f * m * G
    brakes = quad(lambda t: force(speed(t)) * speed(t), 0, time, epsabs=1e-6, epsrel=1e-13)[0]
    into = brakes * (1 - slip) * balance / 2 * share
    values = (quad(speed, 0, time)[0], time, brakes, into, into / (disc * c))
    print(",".join(map(str, case)) + "," + ",".join(f"{value:.9g}" for value in values))
