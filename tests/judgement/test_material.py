"""What magnet, tap and underside do not say stands beside what they say."""

import pytest

from inspector.judgement.material import DIFFER, FALLS, SOUNDS, STICKS, material_beware
from inspector.record.material import Beneath, Magnet, Material, Sound


def test_steel_that_holds_a_magnet_is_said_to_tell_nothing_of_originality():
    assert material_beware(Material(magnet=Magnet.STICKS, sound=Sound.METAL, beneath=Beneath.METAL)) == (STICKS,)
    assert "does not tell whether it is original" in str(STICKS)


@pytest.mark.parametrize("sound", [Sound.FIBRE, Sound.PLASTIC])
def test_a_dull_sound_may_be_something_else(sound):
    assert material_beware(Material(magnet=Magnet.FALLS, sound=sound)) == (FALLS, SOUNDS)


@pytest.mark.parametrize(
    "material",
    [
        Material(magnet=Magnet.STICKS, sound=Sound.PLASTIC),
        Material(magnet=Magnet.STICKS, beneath=Beneath.FIBRE),
        Material(sound=Sound.METAL, beneath=Beneath.FIBRE),
        Material(sound=Sound.FIBRE, beneath=Beneath.PLASTIC),
    ],
)
def test_looks_that_cannot_be_of_one_material_are_told_and_none_is_preferred(material):
    assert DIFFER in material_beware(material)


@pytest.mark.parametrize(
    "material",
    [
        Material(),
        Material(magnet=Magnet.CANNOT, sound=Sound.CANNOT, beneath=Beneath.CANNOT),
        Material(sound=Sound.METAL, beneath=Beneath.METAL),
        Material(magnet=Magnet.CANNOT, beneath=Beneath.FIBRE),
    ],
)
def test_where_nothing_is_to_be_mistaken_nothing_is_said(material):
    assert material_beware(material) == ()


def test_aluminium_is_metal_to_which_no_magnet_sticks():
    assert DIFFER not in material_beware(Material(magnet=Magnet.FALLS, sound=Sound.METAL, beneath=Beneath.METAL))
