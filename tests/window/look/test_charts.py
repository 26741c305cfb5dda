"""Charts say what they are given: counts of strokes, places of bands, every value printed."""

from itertools import pairwise

import pytest
from PySide6.QtCore import QRectF
from PySide6.QtGui import QImage

from inspector.window.look import (
    CoverageBar,
    Move,
    MoveBars,
    ScoreBar,
    Span,
    YearRow,
    YearsChart,
)
from tests.window.look.conftest import SCALES, apart, picture


def runs(image: QImage, y: int, colour) -> list[tuple[int, int]]:
    """The unbroken stretches of about this colour in one line of a picture."""
    found, start = [], None
    for x in range(image.width() + 1):
        here = x < image.width() and abs(image.pixelColor(x, y).lightness() - colour.lightness()) < 40
        if here and start is None:
            start = x
        elif not here and start is not None:
            found.append((start, x))
            start = None
    return found


@pytest.mark.parametrize(
    ("percent", "dots", "strokes"),
    [(0, 0, 50), (41, 20, 30), (92, 46, 4), (99.5, 49, 1), (100, 50, 0), (130, 50, 0), (-3, 0, 50)],
)
def test_what_is_left_stands_and_never_rounds_to_nothing(look, qtbot, percent, dots, strokes):
    bar = CoverageBar(look)
    qtbot.addWidget(bar)
    bar.set_seen(percent)
    assert (bar.seen, bar.left) == (dots, strokes)


@pytest.mark.parametrize(("seen", "left"), [(0, 9), (10, 5), (4, 0), (40, 60)])
def test_there_is_one_stroke_for_each_item(look, qtbot, seen, left):
    bar = CoverageBar(look, seen=seen, left=left)
    qtbot.addWidget(bar)
    bar.resize(900, 14)
    image = picture(bar)
    # Half way up only strokes are met, along the foot dots as well.
    assert len(runs(image, 4, look.colour("ink"))) == left
    standing = [x for x, _ in runs(image, 4, look.colour("ink"))]
    lying = [x for x, _ in runs(image, 12, look.colour("line"))]
    assert len(lying) >= seen
    assert all(dot < stroke for dot in lying[:seen] for stroke in standing)


def test_the_score_stands_in_its_band(look, qtbot):
    bar = ScoreBar(look, 78, 28, 95)
    qtbot.addWidget(bar)
    bar.resize(266, bar.sizeHint().height())
    image = picture(bar)
    (stroke,) = runs(image, 1, look.colour("ink"))
    assert sum(stroke) / 2 == pytest.approx(266 * 0.78, abs=2)
    edges = [run for run in runs(image, look.grown(5.2) // 2, look.colour("ink")) if run[1] - run[0] < 4]
    assert edges[0][0] == pytest.approx(266 * 0.28, abs=3)
    assert edges[-1][1] == pytest.approx(266 * 0.95, abs=3)


def test_without_a_score_there_is_a_band_and_no_stroke(look, qtbot):
    bar = ScoreBar(look, None, 0, 100)
    qtbot.addWidget(bar)
    bar.resize(266, bar.sizeHint().height())
    assert runs(picture(bar), 1, look.colour("ink")) == []


@pytest.mark.parametrize(("low", "high"), [(76, 79), (0, 3), (97, 100), (50, 50)])
def test_both_ends_are_printed_without_touching(look, qtbot, low, high):
    bar = ScoreBar(look, low, low, high)
    qtbot.addWidget(bar)
    bar.resize(266, bar.sizeHint().height())
    image = picture(bar)
    top = look.grown(5.2)
    inked = [x for x in range(image.width())
             if any(image.pixelColor(x, y).lightness() < 150 for y in range(top + 2, image.height()))]  # fmt: skip
    gaps = [b - a for a, b in pairwise(inked) if b - a > 6]
    assert len(gaps) == (0 if low == high else 1)
    assert inked[0] >= 0
    assert inked[-1] < 266


MOVES = [Move("Fuel tank", "find one of 1951–54", "fail", 0, 8),
         Move("Carburettor", "find the stamp 61", "doubt", 2, 2),
         Move("Gearbox casting", "take off the chain guard", "cannot be seen", 4, 1)]  # fmt: skip


@pytest.mark.parametrize("scale", SCALES)
@pytest.mark.parametrize("width", [260, 560])
def test_bands_stand_below_the_words_where_there_is_no_room_beside(look, qtbot, width, scale):
    look.set_text_scale(scale)
    bars = MoveBars(look, "What would move it most", "now 78", MOVES)
    qtbot.addWidget(bars)
    bars.resize(width, bars.heightForWidth(width))
    beside = bars._split(width)[1]
    assert beside is (width >= look.grown(90))
    upright, unit = bars._scale(0 if not beside else width * bars.SHARE, width)
    assert unit > 0
    label = look.words("−4", "text", True).natural
    assert upright - 4 * unit - label >= 0
    assert upright + 8 * unit + label <= width


ROWS = [YearRow("frame", (Span(1952, 1952, "condition"), Span(1953, 1953)), "1952 only if figure 5 is 3"),
        YearRow("engine", (Span(1952, 1954),)), YearRow("tank", (Span(1955, 1958, "odd"),), "odd one out"),
        YearRow("electrics")]  # fmt: skip


def years(look, qtbot, rows, claimed=1953):
    chart = YearsChart(look, 1950, 1958, claimed, rows, claimed_word="claimed")
    qtbot.addWidget(chart)
    chart.resize(628, chart.heightForWidth(628))
    return chart


def test_a_bar_lies_over_its_years_and_is_solid_in_the_claimed_one(look, qtbot):
    chart = years(look, qtbot, [YearRow("engine", (Span(1952, 1954),))])
    image = picture(chart)
    middle = chart._head() + look.grown(6.2) // 2
    solid = max(runs(image, middle, look.colour("ink")), key=lambda run: run[1] - run[0])
    assert solid[0] == pytest.approx(chart._x(1953), abs=2)
    assert solid[1] == pytest.approx(chart._x(1954), abs=2)
    inside = image.pixelColor(round(chart._x(1952.5)), middle)
    assert inside == look.colour("tray")
    outside = image.pixelColor(round(chart._x(1951.5)), middle)
    assert outside == look.colour("paper")


def test_each_kind_of_row_is_told_apart_in_a_grey_copy(look, qtbot, scheme):
    look.set_scheme(scheme)
    spans = [(Span(1955, 1958),), (Span(1955, 1958, "odd"),), (Span(1955, 1958, "condition"),), ()]
    pictures = [picture(years(look, qtbot, [YearRow("tank", span)])) for span in spans]
    least = [apart(one, other, 20) for n, one in enumerate(pictures) for other in pictures[n + 1 :]]
    assert min(least) > 0.001


@pytest.mark.parametrize("claimed", [1953, 1940, None])
def test_a_claimed_year_outside_the_chart_is_no_trouble(look, qtbot, claimed):
    chart = years(look, qtbot, ROWS, claimed)
    middle = round(chart._head() + 1.5 * look.grown(6.2))
    solid = [run for run in runs(picture(chart), middle, look.colour("ink")) if run[1] - run[0] > 40]
    assert bool(solid) is (claimed == 1953)


def test_a_note_stands_where_no_bar_is(look, qtbot):
    chart = years(look, qtbot, ROWS)
    assert chart._free(ROWS[0]) == (chart._x(1954), chart._x(1959))
    assert chart._free(ROWS[2]) == (chart._x(1950), chart._x(1953))


LONG = "1952 if figure 5 is 3; 1953 if figure 5 is 8, and 1954 to 1958 in any other case"


@pytest.mark.parametrize("width", [400, 628, 1000])
def test_words_without_room_beside_the_bars_stand_below_them_in_whole(look, qtbot, width):
    row = YearRow("frame", (Span(1950, 1952, "condition"), Span(1953, 1956)), LONG)
    plain, told = (YearsChart(look, 1950, 1958, 1953, [one]) for one in (YearRow(row.label, row.spans), row))
    for chart in (plain, told):
        qtbot.addWidget(chart)
        chart.resize(width, chart.heightForWidth(width))
    room = told.height() - plain.height()
    assert room >= look.words(LONG, "small").height(width - told._labels(width))
    assert told._place_of_note(row, QRectF(0, 0, width, 40), room).right() <= width


def test_short_words_add_no_height(look, qtbot):
    noted, plain = (years(look, qtbot, [YearRow("tank", ROWS[2].spans, note)]) for note in ("odd one out", ""))
    assert noted.height() == plain.height()
