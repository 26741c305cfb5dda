"""Two patches of one picture."""

import pytest
from skimage import color

from inspector.photo.patch import WARNING, compared, patch_of


def even(rgb):
    return patch_of([rgb] * 9)


@pytest.mark.parametrize(
    ("part", "reference"), [((30, 70, 40), (60, 90, 70)), ((200, 20, 30), (180, 40, 30)), ((90, 90, 90), (91, 90, 90))]
)
def test_the_difference_is_that_of_scikit_image(part, reference):
    labs = [color.rgb2lab([[[channel / 255 for channel in rgb]]]) for rgb in (part, reference)]
    apart = color.deltaE_ciede2000(*labs).item()
    assert compared(even(part), even(reference)).difference == pytest.approx(apart, abs=0.02)


def test_the_warning_stands_with_every_answer_and_nothing_is_judged():
    answer = compared(even((30, 70, 40)), even((60, 90, 70)))
    assert answer.warnings == (WARNING,)
    assert "the reference is lighter" in str(answer.sentence)
    assert not any(word in str(answer.sentence) for word in ("right", "wrong", "same", "match"))


def test_a_patch_of_two_colours_and_one_out_of_range_are_doubtful():
    mixed = patch_of([(30, 70, 40), (200, 200, 200)] * 8)
    assert mixed.uneven
    assert "not one colour" in str(compared(mixed, even((60, 90, 70))).warnings[0])
    for rgb in ((255, 250, 251), (3, 2, 5)):
        assert even(rgb).beyond
        assert "too bright or too dark" in str(compared(even(rgb), even((60, 90, 70))).warnings[0])
    assert not even((60, 90, 70)).beyond


def test_no_pixels_are_no_patch():
    with pytest.raises(ValueError, match="at least one"):
        patch_of([])
