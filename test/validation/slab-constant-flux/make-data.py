"""python3 make-data.py > data.csv"""
import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1]))
from slab import agree, constant, finite_volumes

times = [0.05, 0.1, 0.2, 0.5, 1.0]
faces = [[constant(Fo, x) for Fo in times] for x in (0, 1)]
agree(faces, finite_volumes(times, flux=lambda t: 1.0))
print("Fo,surface,back")
for Fo, surface, back in zip(times, *faces):
    print(f"{Fo},{surface:.6f},{back:.6f}")
