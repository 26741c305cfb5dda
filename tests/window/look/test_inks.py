"""Contrast by the formula of WCAG 2 (W3C, Web Content Accessibility Guidelines 2.2)."""

import pytest
from PySide6.QtGui import QPalette

from inspector.window.look import SCHEMES, palette

TEXT = ("ink", "soft")
MARKS = ("line", "pass", "doubt", "fail", "focus")
# The ratios the schemes were chosen for, on paper and on tray, to one decimal.
CHOSEN = {
    "light": {"ink": (15.3, 13.6), "soft": (8.5, 7.6), "line": (5.4, 4.8), "pass": (8.0, 7.1),
              "doubt": (6.5, 5.8), "fail": (7.2, 6.5), "focus": (6.6, 5.9)},
    "dark": {"ink": (15.5, 13.4), "soft": (10.0, 8.6), "line": (5.8, 5.0), "pass": (9.3, 8.0),
             "doubt": (9.6, 8.3), "fail": (8.5, 7.3), "focus": (10.4, 9.0)},
    "sunlight": {"ink": (21.0, 21.0), "soft": (17.0, 17.0), "line": (21.0, 21.0),
                 "pass": (12.7, 12.7), "doubt": (11.6, 11.6), "fail": (10.4, 10.4),
                 "focus": (12.9, 12.9)},
}  # fmt: skip


def luminance(colour):
    """Relative luminance: https://www.w3.org/TR/WCAG22/#dfn-relative-luminance"""

    def channel(value):
        return value / 12.92 if value <= 0.04045 else ((value + 0.055) / 1.055) ** 2.4

    red, green, blue = (channel(v) for v in (colour.redF(), colour.greenF(), colour.blueF()))
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one, other):
    """Contrast ratio: https://www.w3.org/TR/WCAG22/#dfn-contrast-ratio"""
    high, low = sorted((luminance(one), luminance(other)), reverse=True)
    return (high + 0.05) / (low + 0.05)


def test_black_on_white_is_twenty_one_to_one():
    # The same document: ratios range from 1 to 21.
    inks = SCHEMES["sunlight"]
    assert contrast(inks.colour("ink"), inks.colour("paper")) == pytest.approx(21.0)


@pytest.mark.parametrize("ground", ["paper", "tray"])
def test_text_is_seven_to_one_and_marks_four_and_a_half(scheme, ground):
    inks = SCHEMES[scheme]
    on = inks.colour(ground)
    assert {n for n in TEXT if contrast(inks.colour(n), on) < 7.0} == set()
    assert {n for n in MARKS if contrast(inks.colour(n), on) < 4.5} == set()


@pytest.mark.parametrize("ink", [*TEXT, *MARKS])
def test_each_ink_has_the_contrast_it_was_chosen_for(scheme, ink):
    inks = SCHEMES[scheme]
    found = [contrast(inks.colour(ink), inks.colour(ground)) for ground in ("paper", "tray")]
    # One decimal was printed, so half of one is what may differ.
    assert found == pytest.approx(CHOSEN[scheme][ink], abs=0.06)


def test_a_reversed_key_is_as_easy_to_read(scheme):
    inks = SCHEMES[scheme]
    assert contrast(inks.colour("paper"), inks.colour("ink")) >= 15.0


def test_every_text_role_of_the_palette_is_seven_to_one(scheme):
    made = palette(SCHEMES[scheme])
    pairs = [("WindowText", "Window"), ("Text", "Base"), ("ButtonText", "Button"),
             ("ToolTipText", "ToolTipBase"), ("HighlightedText", "Highlight"),
             ("PlaceholderText", "Base"), ("Link", "Base")]  # fmt: skip
    groups = (QPalette.ColorGroup.Active, QPalette.ColorGroup.Inactive, QPalette.ColorGroup.Disabled)
    low = [
        (text, group)
        for group in groups
        for text, ground in pairs
        if contrast(made.color(group, QPalette.ColorRole[text]),
                    made.color(group, QPalette.ColorRole[ground])) < 7.0
    ]  # fmt: skip
    assert low == []
