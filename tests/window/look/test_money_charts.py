"""Charts of money: lozenges told apart without colour, on one scale, every value in print, nothing beyond the edge."""

import pytest
from PySide6.QtCore import QPointF
from PySide6.QtGui import QImage, QPainter

from inspector.window.look.fieldrow import FieldRow
from inspector.window.look.fields import LineField
from inspector.window.look.frontier import FrontierChart, Reached
from inspector.window.look.lozenge import ASKED, BID, SOLD, paint_lozenge
from inspector.window.look.scale import scale_for
from inspector.window.look.sharebars import ShareBars
from inspector.window.look.sums import Sum, SumTable
from inspector.window.look.worthchart import Comparison, WorthBand, WorthChart, WorthDrawn, WorthWords
from tests.window.look.conftest import picture

SIDE = 80


def dark_share(look, kind):
    """How much of a lozenge is inked: in its left half and in its right half."""
    image = QImage(SIDE, SIDE, QImage.Format.Format_RGB32)
    image.fill(look.colour("paper"))
    painter = QPainter(image)
    paint_lozenge(painter, QPointF(SIDE / 2, SIDE / 2), kind, look)
    painter.end()
    ink = look.colour("ink").lightness()
    halves = [0, 0]
    for x in range(SIDE):
        for y in range(SIDE):
            if abs(image.pixelColor(x, y).lightness() - ink) < 60:
                halves[x >= SIDE / 2] += 1
    return halves


def longest_run(image, y, ink):
    """The longest stretch of about this ink in one line of a picture."""
    longest = run = 0
    for x in range(image.width()):
        run = run + 1 if abs(image.pixelColor(x, y).lightness() - ink) < 60 else 0
        longest = max(longest, run)
    return longest


def test_sold_is_filled_bid_half_and_asked_open(look):
    sold, bid, asked = (dark_share(look, kind) for kind in (SOLD, BID, ASKED))
    assert sold[0] == pytest.approx(sold[1], rel=0.15)
    assert bid[0] > 1.5 * bid[1]
    assert sum(asked) < 0.6 * sum(sold)
    assert asked[0] == pytest.approx(asked[1], rel=0.2)


@pytest.mark.parametrize(
    "values",
    [(), (0,), (7400,), (6011, 13919), (0.01, 0.02), (1, 1e8), (5, 5, 5), (-900, 400), (9999.99, 10000.01)],
)
def test_a_scale_holds_every_value_and_rises(values):
    scale = scale_for(values, 5)
    assert scale.low < scale.high
    assert all(scale.low <= value <= scale.high for value in values)
    assert list(scale.ticks) == sorted(set(scale.ticks))
    assert 2 <= len(scale.ticks) <= 8


def worth(asked=7400.0):
    rows = (
        Comparison("sold, club sale", "March 2025, 9,900, adjusted 7,747", SOLD, 9900, 7747),
        Comparison("asked, dealer", "May 2025, 13,900", ASKED, 13900, 13900),
        Comparison("sold abroad", "900 EUR, no rate", SOLD, None, None),
    )
    bands = (WorthBand("put right", "9,013 to 10,945, middle 9,113", 9013, 9113, 10945),)
    return WorthDrawn(WorthWords("pounds", "Comparables", "ring as entered", "sold", "bid", "asked",
                                  "7,400 asked for this one"), bands, rows, asked)  # fmt: skip


@pytest.mark.parametrize("width", [320, 640, 1200])
def test_a_worth_is_told_in_words_with_every_value_and_legend_only_of_what_is_there(look, qtbot, width):
    chart = WorthChart(look, lambda value: f"{value:,.0f}")
    qtbot.addWidget(chart)
    chart.show_worth(worth())
    chart.resize(width, chart.heightForWidth(width))
    told = chart.accessibleName()
    for words in ("9,013 to 10,945", "9,900, adjusted 7,747", "no rate", "7,400 asked for this one"):
        assert words in told
    assert [kind for kind, _ in chart._legend()] == [SOLD, ASKED, "upright"]
    places, high = chart._legend_places(width)
    assert len(places) == 3
    assert high > 0
    image, ink = picture(chart), look.colour("ink").lightness()
    assert max(longest_run(image, y, ink) for y in range(image.height())) >= width - 2  # the line over the rows
    assert chart.heightForWidth(320) >= chart.heightForWidth(1200)
    chart.show_worth(worth(None))
    assert "asked for this one" not in chart.accessibleName()


def test_a_chart_of_nothing_is_drawn_without_complaint(look, qtbot):
    chart, frontier = WorthChart(look, str), FrontierChart(look, str)
    for one in (chart, frontier):
        qtbot.addWidget(one)
        one.resize(300, 200)
        image = picture(one)
        colours = {image.pixel(x, y) for x in range(0, 300, 7) for y in range(40, 200, 7)}
        assert len(colours) == 1


def test_a_frontier_says_what_each_cost_reaches(look, qtbot):
    chart = FrontierChart(look, lambda value: f"{value:,.0f}")
    qtbot.addWidget(chart)
    chart.show_frontier([Reached(0, 60), Reached(900, 66), Reached(2400, 79)], 1200, unit="pounds", what="of 100",
                        told="0 reaches 60. 900 reaches 66. 2,400 reaches 79")  # fmt: skip
    chart.resize(*chart.sizeHint().toTuple())
    assert chart.accessibleName().count("reaches") == 3
    before = picture(chart)
    chart.budget = None
    assert picture(chart) != before  # the budget is there to be seen


def test_sums_have_room_for_name_and_figure_at_any_width(look, qtbot):
    table = SumTable(look, [Sum("Buyer's premium and whatever else they call it", "1,110.50", "15 %, as entered"),
                            Sum("Likely", "11,524.25", total=True)])  # fmt: skip
    qtbot.addWidget(table)
    assert table.accessibleName() == (
        "Buyer's premium and whatever else they call it 15 %, as entered 1,110.50. Likely 11,524.25"
    )
    assert table.heightForWidth(table.minimumSizeHint().width()) > table.heightForWidth(table.sizeHint().width())


def test_shares_are_as_long_as_they_are_large(look, qtbot):
    bars = ShareBars(look, [("half", 0.5, "50 %"), ("none", 0.0, "0 %"), ("more than all", 1.7, "170 %")])
    qtbot.addWidget(bars)
    bars.resize(200, bars.heightForWidth(200))
    assert "half 50 %" in bars.accessibleName()
    image, ink = picture(bars), look.colour("ink").lightness()
    longest = [longest_run(image, y, ink) for y in range(image.height())]
    half, whole = (sum(abs(run - long) <= 2 for run in longest) for long in (100, 200))
    assert half >= 2  # the upper and the lower edge of a bar
    assert whole >= 2


def test_fields_stand_beside_one_another_where_there_is_room(look, qtbot):
    fields = [LineField(look, name) for name in ("low", "likely", "high")]
    row = FieldRow(look, fields)
    qtbot.addWidget(row)
    wide = 4 * look.grown(27)
    beside, _ = row.places_at(wide)
    assert len({rect.y() for _, rect in beside}) == 1
    narrow, high = row.places_at(look.grown(40))
    assert len({rect.y() for _, rect in narrow}) == 3
    assert high > row.places_at(wide)[1]
    fields[1].say("What is wrong, in a sentence that is long enough to wrap.")
    noted, _ = row.places_at(wide)
    assert len({rect.y() for _, rect in noted}) == 1
    assert noted[0][1].height() < noted[1][1].height()
