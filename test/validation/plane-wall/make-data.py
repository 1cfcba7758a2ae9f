"""python3 make-data.py > data.csv"""
import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1]))
from slab import agree, cooled, finite_volumes

times = [0.2, 0.5, 1.0]
lines = []
for Bi in (0.1, 1.0):
    faces = [[cooled(Fo, x, Bi) for Fo in times] for x in (0, 1)]
    agree(faces, finite_volumes(times, Bi=Bi, start=1.0))
    lines += [f"{Bi:g},{Fo:g},{a:.6f},{b:.6f}" for Fo, a, b in zip(times, *faces)]
print("Bi,Fo,cooled,insulated", *lines, sep="\n")
