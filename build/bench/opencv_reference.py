#!/usr/bin/python3
"""OpenCV reference for one page: stage times (median of 10, ms) and counts, as JSON.

usage: opencv_reference.py PAGE [--threads N] [--dump GRAY.bin]
       opencv_reference.py --mask GRAY.bin WIDTH HEIGHT OUT.bin
Needs Debian's python3-opencv and python3-numpy. A general-purpose reference for ratios and cross-checks:
Sauvola here is unfused passes from Python, so 'adaptive_mean' (one tuned primitive) is given as well.
--dump writes the decoded gray buffer (row-major bytes), so that both sides can start from identical input.
--mask writes the Sauvola ink (0 or 1) of such a buffer.
"""
import json
import statistics
import sys
import time

import cv2
import numpy as np


def sauvola(gray, window=51, k=0.25, dynamic_range=128.0):
    mean = cv2.boxFilter(gray, cv2.CV_32F, (window, window))
    square = cv2.sqrBoxFilter(gray, cv2.CV_32F, (window, window))
    deviation = cv2.sqrt(cv2.max(square - mean * mean, 0))
    threshold = mean * (1 + k * (deviation / dynamic_range - 1))
    return (gray <= threshold).astype(np.uint8) * 255


def run(raw):
    times, start = {}, time.perf_counter()

    def lap(name):
        nonlocal start
        now = time.perf_counter()
        times[name] = (now - start) * 1e3
        start = now

    gray = cv2.imdecode(raw, cv2.IMREAD_GRAYSCALE)
    lap("decode")
    cv2.adaptiveThreshold(gray, 255, cv2.ADAPTIVE_THRESH_MEAN_C, cv2.THRESH_BINARY_INV, 51, 15)
    lap("adaptive_mean")
    ink = sauvola(gray)
    lap("sauvola")
    rulings = cv2.morphologyEx(ink, cv2.MORPH_OPEN, cv2.getStructuringElement(cv2.MORPH_RECT, (101, 1)))
    clean = cv2.subtract(ink, rulings)
    clean = cv2.morphologyEx(clean, cv2.MORPH_CLOSE, cv2.getStructuringElement(cv2.MORPH_RECT, (1, 5)))
    lap("rule_removal")
    components, _, _, _ = cv2.connectedComponentsWithStats(clean, connectivity=8, ltype=cv2.CV_32S)
    lap("components")
    _, tree = cv2.findContours(clean, cv2.RETR_CCOMP, cv2.CHAIN_APPROX_NONE)[-2:]
    holes = int((tree[0, :, 3] >= 0).sum()) if tree is not None else 0
    lap("holes")
    return gray, times, {"components": components - 1, "holes": holes, "ink_pixels": int((ink > 0).sum())}


def main():
    args = sys.argv[1:]
    if not args or args[0] in ("-h", "--help"):
        print(__doc__)
        return 0
    if args[0] == "--mask":
        width, height = int(args[2]), int(args[3])
        gray = np.fromfile(args[1], np.uint8).reshape(height, width)
        (sauvola(gray) // 255).tofile(args[4])
        return 0
    if "--threads" in args:
        cv2.setNumThreads(int(args[args.index("--threads") + 1]))
    raw = np.fromfile(args[0], np.uint8)
    gray, _, counts = run(raw)
    if "--dump" in args:
        gray.tofile(args[args.index("--dump") + 1])
    runs = [run(raw)[1] for _ in range(10)]
    times = {name: round(statistics.median(r[name] for r in runs), 2) for name in runs[0]}
    after = round(sum(v for n, v in times.items() if n not in ("decode", "adaptive_mean")), 2)
    tuned = round(after - times["sauvola"] + times["adaptive_mean"], 2)
    print(json.dumps({"opencv": cv2.__version__, "threads": cv2.getNumThreads(), "width": gray.shape[1], "height": gray.shape[0],
                      "ms": times, "after_decode_ms": after, "after_decode_tuned_ms": tuned, **counts}))
    return 0


if __name__ == "__main__":
    sys.exit(main())
