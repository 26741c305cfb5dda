"""The plane of a card seen from straight above has the card's own proportions, whatever the camera saw."""

import numpy as np
import pytest

from inspector.photo.corners import propose
from inspector.photo.plane import Rectangle, TooWeak, View
from inspector.photo.straight import straightened
from tests.photo import scene

CARD = Rectangle(85.60, 53.98, 0.1, 0.1)


@pytest.mark.parametrize("seed", range(4))
def test_a_tilted_card_comes_out_right(seed):
    rng = np.random.default_rng(seed)
    picture = scene.picture(rng, scene.camera(rng), *scene.card(), (85.60, 53.98))
    above, scale = straightened(picture, View(CARD, propose(picture, 85.6 / 53.98)[0]))
    sides = np.linalg.norm(np.roll(np.array(propose(above, 85.6 / 53.98)[0]), -1, axis=0)
                           - np.array(propose(above, 85.6 / 53.98)[0]), axis=1)  # fmt: skip
    assert sides / scale == pytest.approx([85.6, 53.98, 85.6, 53.98], abs=0.6)
    assert max(above.shape) <= 2000


def test_crossed_corners_carry_no_plane():
    with pytest.raises(TooWeak):
        straightened(np.zeros((60, 80, 3), np.uint8), View(CARD, ((0, 0), (80, 60), (80, 0), (0, 60))))
