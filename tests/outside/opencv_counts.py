#!/usr/bin/python3
"""Components and holes of bitmaps by OpenCV and by scikit-image, as JSON, to check the measuring engine against.

usage: opencv_counts.py bitmap FILE WIDTH HEIGHT      one bitmap, a byte a pixel, ink = 1
       opencv_counts.py digits IDX THRESHOLD [STEP]   every STEP-th image of an IDX file (MNIST), ink where >= THRESHOLD
       opencv_counts.py tile DIGITS.png OUT.bin       the 5,000 digits of Debian's opencv-doc as bytes, 20 x 20 each
Ink is 8-connected, paper 4-connected. Holes: OpenCV by contours inside contours, scikit-image by the Euler number.
"""
import json
import sys

import cv2
import numpy as np


def opencv_holes(ink):
    _, tree = cv2.findContours(ink, cv2.RETR_CCOMP, cv2.CHAIN_APPROX_NONE)[-2:]
    return int((tree[0, :, 3] >= 0).sum()) if tree is not None else 0


def skimage_holes(ink):
    from skimage.measure import euler_number, label

    return int(label(ink, connectivity=2).max() - euler_number(ink, connectivity=2))


def bitmap(file, width, height):
    ink = np.fromfile(file, np.uint8).reshape(int(height), int(width))
    components, _, stats, _ = cv2.connectedComponentsWithStats(ink, connectivity=8, ltype=cv2.CV_32S)
    boxes = [[int(v) for v in row] for row in stats[1:]]
    padded = np.pad(ink, 1)
    return {"components": components - 1, "boxes": boxes, "opencv": opencv_holes(padded), "skimage": skimage_holes(padded)}


def digits(file, threshold, step=1):
    with open(file, "rb") as source:
        source.read(4)
        count, rows, columns = (int.from_bytes(source.read(4), "big") for _ in range(3))
        images = np.frombuffer(source.read(), np.uint8).reshape(count, rows, columns)
    ours = [np.pad((image >= int(threshold)).astype(np.uint8), 1) for image in images[:: int(step)]]
    return {"opencv": [opencv_holes(ink) for ink in ours], "skimage": [skimage_holes(ink) for ink in ours]}


def tile(file, out):
    sheet = cv2.imread(file, cv2.IMREAD_GRAYSCALE)
    cells = [cell for row in np.vsplit(sheet, 50) for cell in np.hsplit(row, 100)]
    np.array(cells, np.uint8).tofile(out)
    return {"count": len(cells)}


if __name__ == "__main__":
    print(json.dumps({"bitmap": bitmap, "digits": digits, "tile": tile}[sys.argv[1]](*sys.argv[2:])))
