"""scipy's sparse LU beside the engine: factor + solve, the better of two orderings. Reads one matrix, prints JSON.

usage: splu.py MATRIX complex|real BATCH_MS BATCHES   (MATRIX as klu.c reads it)
"""

import json
import os
import statistics
import sys
import time

os.environ["OPENBLAS_NUM_THREADS"] = "1"  # processor time is measured: threads that wait would count

import numpy
import scipy
from scipy.sparse import csc_matrix
from scipy.sparse.linalg import splu


def read(path, is_complex):
    with open(path, "rb") as file:
        data = file.read()
    n, entries = numpy.frombuffer(data, numpy.int32, 2)
    at = 8
    starts = numpy.frombuffer(data, numpy.int32, n + 1, at)
    at += 4 * (n + 1)
    rows = numpy.frombuffer(data, numpy.int32, entries, at)
    at += 4 * entries
    values = numpy.frombuffer(data, numpy.complex128, entries, at)
    b = numpy.frombuffer(data, numpy.complex128, n, at + 16 * entries)
    if not is_complex:
        values = numpy.ascontiguousarray(values.real)
        b = numpy.ascontiguousarray(b.real)
    return csc_matrix((values, rows.copy(), starts.copy()), shape=(n, n)), b.copy()


def median_microseconds(run, batch, batches):
    count = 0
    start = time.process_time()
    while count < 2 or time.process_time() - start < 3 * batch / 1000:
        run()
        count += 1
    repeats = max(1, round(count * batch / 1000 / (time.process_time() - start)))
    times = []
    for _ in range(batches):
        start = time.process_time()
        for _ in range(repeats):
            run()
        times.append((time.process_time() - start) / repeats * 1e6)
    return statistics.median(times)


def main():
    path, kind, batch, batches = sys.argv[1:]
    a, b = read(path, kind == "complex")
    best = None
    for order in ("COLAMD", "MMD_AT_PLUS_A"):
        took = median_microseconds(
            lambda: splu(a, permc_spec=order).solve(b), float(batch), int(batches)
        )
        if best is None or took < best[0]:
            x = splu(a, permc_spec=order).solve(b)
            residual = float(abs(a @ x - b).max() / abs(x).max())
            best = (took, order, residual)
    print(json.dumps({"microseconds": best[0], "order": best[1], "residual": best[2], "version": scipy.__version__}))


main()
