"""Outlines as shapes, signs that need no colour, and JPEGs made bare."""

import re
from math import hypot

import pytest
from reportlab.pdfgen.canvas import Canvas

from inspector.sheet.draw import kit
from inspector.sheet.draw.beside import Beside, cut
from inspector.sheet.draw.signs import ROUNDS, draw_sign
from inspector.sheet.draw.svg import read_outline
from inspector.sheet.jpeg import Bare, bare
from tests.sheet import made


def path(d):
    return read_outline(f'<svg viewBox="0 0 9 9"><path d="{d}"/></svg>').shapes[0].strokes


def test_the_outline_that_ships_is_read_whole():
    outline = read_outline(made.LEFT)
    assert outline.box == (10, 70, 2220, 1050)
    assert len(outline.shapes) == made.LEFT.count("<path") + made.LEFT.count("<circle")
    assert {shape.ink["stroke-linejoin"] for shape in outline.shapes} == {"round"}


def test_small_letters_are_counted_from_where_the_path_stands():
    assert path("m1 1 l2 0 v3 h-2 z") == path("M1,1 L3,1 L3,4 L1,4 Z")


def test_a_quadratic_curve_is_raised_to_a_cubic_one():
    # The handles lie two thirds of the way to the one handle: degree elevation of Bezier curves, a textbook identity.
    (_, curve) = path("M0 0 Q3 3 6 0")
    assert curve.points == ((2, 2), (4, 2), (6, 0))


def test_a_smooth_curve_mirrors_the_handle_before_it():
    *_, curve = path("M0 0 C1 1 2 2 3 3 S5 5 6 6")
    assert curve.points[0] == (4, 4)


@pytest.mark.parametrize(("large", "sweep", "turns"), [(0, 0, 1), (0, 1, 1), (1, 0, 3), (1, 1, 3)])
def test_an_arc_stays_on_its_circle(large, sweep, turns):
    strokes = path(f"M5 0 A5 5 0 {large} {sweep} 0 5")[1:]
    assert len(strokes) == turns
    assert strokes[-1].points[-1] == pytest.approx((0, 5))
    centre = (5, 5) if large == sweep else (0, 0)
    for stroke in strokes:
        x, y = stroke.points[-1]
        assert hypot(x - centre[0], y - centre[1]) == pytest.approx(5)


@pytest.mark.parametrize(
    "svg",
    ["", "<svg/>", "<html/>", '<svg viewBox="0 0 1"/>', '<svg viewBox="0 0 0 9"><path d="M0 0"/></svg>',
     '<svg viewBox="0 0 9 9"><path d="M0"/></svg>', '<svg viewBox="0 0 9 9"><path d="M0 0 X 1"/></svg>',
     '<!DOCTYPE svg [<!ENTITY a "b">]><svg viewBox="0 0 9 9"><path d="M0 0"/></svg>'],
)  # fmt: skip
def test_what_is_no_outline_is_none(svg):
    assert read_outline(svg) is None


def test_each_sign_is_told_by_its_shape_alone():
    drawn = {}
    for sign in ROUNDS:
        canvas = Canvas("unused.pdf")
        draw_sign(canvas, sign, 20, 20, 10)
        drawn[sign] = re.sub(r"[\d. ]+ (rg|RG)", "", "\n".join(canvas._code))
    assert len(set(drawn.values())) == len(ROUNDS)


def test_a_head_is_not_left_behind_at_the_foot_of_a_column():
    canvas = Canvas("unused.pdf")
    head, body = kit.Piece(10, 20), kit.Piece(10, 50)
    head.head = True
    assert cut([head, body], canvas, 100, 60) == ([], [head, body])
    assert cut([head, body], canvas, 100, 70) == ([head, body], [])


def test_what_fits_but_for_the_space_below_it_is_taken():
    canvas = Canvas("unused.pdf")
    head, body = kit.Piece(10, 20), Beside([], [kit.Piece(10, 50)], at=0, gap=0, below=9)
    head.head = True
    taken, rest = cut([head, body], canvas, 100, 75)
    assert (taken[0], taken[1].right, rest) == (head, body.right, [])


def test_columns_flow_each_on_its_own_and_nothing_is_lost():
    canvas = Canvas("unused.pdf")
    left, right = [kit.Piece(10, 30) for _ in range(2)], [kit.Piece(10, 30) for _ in range(5)]
    beside = Beside(left, right)
    beside.wrapOn(canvas, 300, 100)
    first, later = beside.splitOn(canvas, 300, 100)
    assert (first.left, first.right, later.left, later.right) == (left, right[:3], [], right[3:])


def test_a_bare_picture_is_the_same_picture():
    from io import BytesIO

    from PIL import Image

    made_with = made.jpeg(3, comment=b"a private word")
    shown = bare(made_with)
    assert isinstance(shown, Bare)
    assert (shown.width, shown.height) == (1200, 900)
    assert b"a private word" not in shown.data
    assert Image.open(BytesIO(shown.data)).tobytes() == Image.open(BytesIO(made_with)).tobytes()


@pytest.mark.parametrize("progressive", [False, True])
def test_what_lies_behind_or_between_the_scans_of_a_picture_does_not_come_along(progressive):
    from io import BytesIO

    from PIL import Image

    plain = made.jpeg(3, progressive=progressive)
    note = b"\xff\xfe\x00\x10a private word"  # ITU-T T.81, B.2.4.5: a comment of 14 bytes
    last = plain.rindex(b"\xff\xda")
    hidden = plain[:last] + note + plain[last:] + b"\xff\xd8 a second picture with its place \xff\xd9"
    shown = bare(hidden)
    assert isinstance(shown, Bare)
    assert b"a private word" not in shown.data
    assert b"a second picture" not in shown.data
    assert Image.open(BytesIO(shown.data)).tobytes() == Image.open(BytesIO(plain)).tobytes()


def test_half_a_picture_is_refused():
    data = made.jpeg()
    for end in (3, 20, len(data) // 2, len(data) - 2):
        assert str(bare(data[:end])) == "it cannot be read"

