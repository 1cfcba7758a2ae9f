"""python3 make-data.py > data.csv"""
import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1]))
from slab import agree, falling, finite_volumes

STOP = 50 / (7200 * 500) * 4 / 0.008**2
shares = [0.025, 0.05, 0.25, 0.5, 0.75, 1.0]
faces = [[falling(share * STOP, x, STOP) for share in shares] for x in (0, 1)]
agree(faces, finite_volumes([s * STOP for s in shares], flux=lambda t: 1 - t / STOP))
print("share,early,surface,back")
for share, surface, back in zip(shares, *faces):
    early = share < 0.1
    print(f"{share},{surface:.6f},," if early else f"{share},,{surface:.6f},{back:.6f}")
