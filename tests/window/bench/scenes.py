"""Photographs for the bench, drawn here: a pad under a lamp, and a card beside a tube on a bench top. Invented."""

from pathlib import Path

import cv2
import numpy as np

FLAT = 12.0  # pixels to the mm, seen from straight above
CARD_AT = (300.0, 260.0)  # upper left corner in pixels
TUBE = 40.0  # mm across
SIZE = (1600, 1200)


def saved(path: Path, picture) -> Path:
    tinted = picture[..., None] * np.array([0.86, 0.95, 1.0])  # blue, green, red: a warm lamp
    cv2.imwrite(str(path), np.clip(tinted, 0, 255).astype(np.uint8), [cv2.IMWRITE_JPEG_QUALITY, 95])
    return path


def pad(path: Path, light: float, seed: int = 1, size=SIZE) -> Path:
    """A number stamped into a pad, lit along the surface from one side (degrees, against the clock from the right)."""
    rng = np.random.default_rng(seed)
    drawn = np.zeros((size[1], size[0]), np.uint8)
    for n, figure in enumerate("15842"):
        at = (int(size[0] * (0.14 + 0.155 * n)), int(size[1] * 0.6) + (6 if n == 2 else 0))
        cv2.putText(drawn, figure, at, cv2.FONT_HERSHEY_SIMPLEX, size[0] / 260, 255, size[0] // 90, cv2.LINE_AA)
    depth = cv2.GaussianBlur(drawn.astype(np.float32) / -255, (0, 0), 4)
    down, across = np.gradient(depth)
    turn = np.radians(light)
    lit = np.cos(turn) * across - np.sin(turn) * down
    grain = cv2.GaussianBlur(rng.normal(0, 1, depth.shape).astype(np.float32), (0, 0), 1.5)
    return saved(path, 118 - 900 * lit + 9 * grain)


def card_and_tube(path: Path, tube: float = TUBE) -> Path:
    """A bank card and, in its plane, the shadow of a tube with sharp edges, from straight above."""
    rng = np.random.default_rng(3)
    picture = np.full((SIZE[1], SIZE[0]), 95.0, np.float32)
    x, y = CARD_AT
    corners = [(x, y), (x + 85.60 * FLAT, y), (x + 85.60 * FLAT, y + 53.98 * FLAT), (x, y + 53.98 * FLAT)]
    fine = 16
    shape = np.round(np.array(corners) * fine).astype(np.int32)
    cv2.fillConvexPoly(picture, shape, 210.0, cv2.LINE_AA, 4)
    cv2.rectangle(picture, (300, 1000), (300 + round(tube * FLAT), 1080), 40.0, -1)
    picture = cv2.GaussianBlur(picture, (0, 0), 0.8) + rng.normal(0, 3, picture.shape)
    return saved(path, picture)


def tube_ends(tube: float = TUBE):
    """Both edges of the tube in pixels."""
    return (299.5, 1040.0), (299.5 + round(tube * FLAT) + 1, 1040.0)
