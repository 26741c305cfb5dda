"""Pictures drawn from a known scene: a card or a coin on a plane, seen by a pinhole camera, with noise."""

import cv2
import numpy as np

FOCAL, SIZE, FINE = 1500.0, (1600, 1200), 8.0  # pixels; width and height; pixels to the mm of what is drawn flat


def camera(rng, tilt=35.0, far=320.0):
    """Takes mm in the plane of the card to pixels; tilted up to ``tilt`` degrees any way, turned any way."""
    lean, about, roll = np.radians(rng.uniform(0, tilt)), rng.uniform(0, 2 * np.pi), rng.uniform(0, 2 * np.pi)
    axis = np.array([np.cos(about), np.sin(about), 0.0])
    turn = cv2.Rodrigues(axis * lean)[0] @ cv2.Rodrigues(np.array([0.0, 0.0, roll]))[0]
    inside = np.array([[FOCAL, 0, SIZE[0] / 2], [0, FOCAL, SIZE[1] / 2], [0, 0, 1.0]])
    middle = np.array([42.8 + rng.uniform(-8, 8), 27.0 + rng.uniform(-8, 8)])
    shift = np.array([[1, 0, -middle[0]], [0, 1, -middle[1]], [0, 0, 1.0]])
    plane = np.column_stack([turn[:, 0], turn[:, 1], np.array([0, 0, far])])
    return inside @ plane @ shift


def seen(matrix, points):
    there = np.column_stack([points, np.ones(len(points))]) @ matrix.T
    return there[:, :2] / there[:, 2:]


def ground(rng):
    """A bench top: uneven grey with grain."""
    coarse = rng.normal(0, 1, (12, 16)).astype(np.float32)
    return 95 + 14 * cv2.resize(coarse, SIZE, interpolation=cv2.INTER_CUBIC)


def card(width=85.60, height=53.98, radius=3.18):
    """A light card with rounded corners and a dark stripe, and where it is, both flat."""
    wide, high, round_ = (round(x * FINE) for x in (width, height, radius))
    mask = np.zeros((high, wide), np.float32)
    cv2.rectangle(mask, (round_, 0), (wide - 1 - round_, high - 1), 1.0, -1)
    cv2.rectangle(mask, (0, round_), (wide - 1, high - 1 - round_), 1.0, -1)
    for x in (round_, wide - 1 - round_):
        for y in (round_, high - 1 - round_):
            cv2.circle(mask, (x, y), round_, 1.0, -1)
    face = np.full((high, wide), 205.0, np.float32)
    face[int(0.12 * high) : int(0.3 * high)] = 60.0
    return face, mask


def coin(size):
    """A bright disc, and where it is, both flat."""
    across = round(size * FINE)
    mask = np.zeros((across, across), np.float32)
    cv2.circle(mask, (across // 2, across // 2), across // 2, 1.0, -1)
    return np.full((across, across), 200.0, np.float32), mask


def picture(rng, matrix, face, mask, size, noise=5.0):
    """The scene as the camera sees it, (height, width, 3); ``size`` is that of the thing in mm."""
    flat = np.diag([size[0] / face.shape[1], size[1] / face.shape[0], 1.0]) @ np.array(
        [[1, 0, 0.5], [0, 1, 0.5], [0, 0, 1.0]]
    )
    wide = (SIZE[0], SIZE[1])
    laid = cv2.warpPerspective(face, matrix @ flat, wide, flags=cv2.INTER_AREA)
    where = cv2.warpPerspective(mask, matrix @ flat, wide, flags=cv2.INTER_AREA)
    share = np.where(where > 0.02, where, 0)
    laid = np.where(where > 0.02, laid, 0)
    scene = cv2.GaussianBlur(ground(rng) * (1 - share) + laid * share, (0, 0), 1.0)
    scene = scene + rng.normal(0, noise, scene.shape)
    grey = np.clip(np.round(scene), 0, 255).astype(np.uint8)
    return np.dstack([grey, grey, grey])
