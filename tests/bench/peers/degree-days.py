# Single-sine degree-days with a horizontal cutoff, vectorised. For each line read it takes a turn and writes
# the nanoseconds a day of whole columns, of blocks that stay in the cache, and the sum.
import sys
import time

import numpy as np

COUNT = int(sys.argv[1])
LOWER, UPPER = 10.0, 22.0
BLOCK = 8192

i = np.arange(COUNT, dtype=float)
low = 12 + 8 * np.sin(i) - 4 * np.cos(i * 0.7)
high = low + 6 + 5 * np.sin(i * 1.3) ** 2


def excess(threshold, mean, half):
    below = mean - threshold
    # Out of the day's range asin is held at its ends, where the formula gives 0 or the distance itself.
    share = np.clip(below / half, -1, 1)
    return below * (np.pi / 2 + np.arcsin(share)) + half * np.sqrt(1 - share * share)


def degree_days(low, high):
    half = (high - low) / 2
    mean = low + half
    return (excess(LOWER, mean, half) - excess(UPPER, mean, half)) / np.pi


def in_blocks():
    out = np.empty(COUNT)
    for at in range(0, COUNT, BLOCK):
        out[at : at + BLOCK] = degree_days(low[at : at + BLOCK], high[at : at + BLOCK])
    return out


def timed(task):
    begun = time.perf_counter()
    result = task()
    return (time.perf_counter() - begun) * 1e9 / COUNT, result


for _ in sys.stdin:
    whole, column = timed(lambda: degree_days(low, high))
    blocks, _ = timed(in_blocks)
    print(whole, blocks, column.sum(), flush=True)
