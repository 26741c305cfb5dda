"""The outline drawing: found by finger and keyboard, painted in order, quick to draw."""

from time import process_time

import pytest
from PySide6.QtCore import QPoint, QPointF, QRectF, Qt
from PySide6.QtSvg import QSvgRenderer

from inspector.resource import resource
from inspector.window.look import SCHEMES, OutlineView, Spot
from inspector.window.look.drawing import Drawing, NoDrawing
from inspector.window.look.outline import sign_on_halo
from tests.window.look.conftest import picture

VIEWS = ("left", "right", "front", "rear", "top")
GROUPS = {"wheels", "rear-end", "frame", "front-end", "gearbox", "engine", "exhaust", "drive",
          "tank", "seat", "electrics", "controls"}  # fmt: skip
# Far from one another but for the last two, which are 28 mm of the machine apart.
SPOTS = [
    Spot("wheel", 376, 764, "fail", "Front wheel"),
    Spot("saddle", 1400, 400, "not seen", "Saddle"),
    Spot("tail", 2180, 600, "pass", "Tail lamp"),
    Spot("carb", 1180, 560, "doubt", "Carburettor"),
    Spot("float", 1205, 572, "pass", "Float chamber"),
]


def left():
    return resource("outlines", "left.svg")


@pytest.fixture
def view(look, stage):
    made = OutlineView(look, left(), name="Outline, left side")
    made.set_spots(SPOTS)
    return stage(made, 362, made.heightForWidth(362))


def at(view, spot, right=0.0, down=0.0):
    """A point of the view so many millimetres away from a spot."""
    here = view.place(next(s for s in view.spots if s.id == spot))
    return (here + QPointF(view.look.mm(right), view.look.mm(down))).toPoint()


def touch(view, qtbot, point):
    qtbot.mouseClick(view, Qt.MouseButton.LeftButton, pos=point)


@pytest.mark.parametrize("away", [0.0, 3.0, 5.8])
def test_a_touch_within_six_millimetres_finds_the_spot(view, qtbot, away):
    with qtbot.waitSignal(view.spotChosen, timeout=1000) as chosen:
        touch(view, qtbot, at(view, "wheel", right=away))
    assert chosen.args == ["wheel"]


def test_a_touch_farther_away_finds_nothing(view, qtbot):
    told = []
    view.spotChosen.connect(told.append)
    touch(view, qtbot, at(view, "wheel", right=6.4))
    assert told == []


def test_two_that_are_near_are_offered_by_name_nearest_first(view, qtbot):
    told = []
    view.spotChosen.connect(told.append)
    with qtbot.waitSignal(view.spotsOffered, timeout=1000) as offered:
        touch(view, qtbot, at(view, "float", right=0.5))
    assert offered.args == [["float", "carb"]]
    assert told == []
    assert [row.title for row in view.list.rows] == ["Float chamber", "Carburettor"]
    assert [row.sign for row in view.list.rows] == ["pass", "doubt"]
    assert [row.accessibleName() for row in view.list.rows] == ["Float chamber, pass", "Carburettor, doubt"]
    with qtbot.waitSignal(view.spotChosen, timeout=1000) as chosen:
        qtbot.mouseClick(view.list.rows[1], Qt.MouseButton.LeftButton)
    assert chosen.args == ["carb"]


def test_the_keyboard_goes_from_spot_to_spot_and_says_where_it_is(view, qtbot):
    view.set_open("saddle", "14")
    view.clearFocus()
    view.setFocus(Qt.FocusReason.TabFocusReason)
    assert view.accessibleName() == "Outline, left side, Saddle, not seen"
    qtbot.keyClick(view, Qt.Key.Key_Right)
    assert view.accessibleName() == "Outline, left side, Tail lamp, pass"
    with qtbot.waitSignal(view.spotChosen, timeout=1000) as chosen:
        qtbot.keyClick(view, Qt.Key.Key_Return)
    assert chosen.args == ["tail"]
    for _ in range(3):
        qtbot.keyClick(view, Qt.Key.Key_Left)
    assert view.at == "float"


def test_what_needs_you_is_painted_last_and_largest(view):
    view.set_open("saddle", "14")
    assert [spot.id for spot in view.painted_order()] == ["tail", "float", "carb", "wheel", "saddle"]
    size = {spot.id: view.diameter(spot) / view.look.mm(3.6) for spot in view.spots}
    assert size == pytest.approx({"wheel": 1.15, "carb": 1.0, "tail": 0.82, "float": 0.82, "saddle": 0.82 * 1.4})


@pytest.mark.parametrize("view_name", VIEWS)
@pytest.mark.parametrize("spot", range(len(SPOTS)))
def test_the_number_stands_off_the_machine_and_in_the_view(look, stage, view_name, spot):
    made = OutlineView(look, resource("outlines", f"{view_name}.svg"))
    box = made.drawing.box
    made.set_spots([Spot(s.id, box.x() + (s.x - 10) / 2220 * box.width(),
                         box.y() + (s.y - 70) / 1050 * box.height(), s.sign, s.label)
                    for s in SPOTS])  # fmt: skip
    stage(made, 362, made.heightForWidth(362))
    made.set_open(SPOTS[spot].id, "62")
    rect, line = made.number_place(made.spots[spot])
    assert QRectF(made.rect()).contains(rect)
    bare = OutlineView(look, resource("outlines", f"{view_name}.svg"))
    bare.set_spots([Spot("away", -9000, -9000, "pass", "away")])
    stage(bare, made.width(), made.height())
    inside = picture(bare).copy(rect.toAlignedRect().adjusted(1, 3, -1, -3))
    paper = look.colour("paper")
    drawn = [(x, y) for x in range(inside.width()) for y in range(inside.height())
             if inside.pixelColor(x, y) != paper]  # fmt: skip
    assert drawn == []
    assert line.length() > 0


def test_the_same_drawing_is_rendered_once_a_size_and_scheme(view, look, monkeypatch):
    rendered = []
    plain = Drawing._render

    def counted(self, size, text):
        rendered.append(size.width())
        return plain(self, size, text)

    monkeypatch.setattr(Drawing, "_render", counted)
    for scheme in ("dark", "light", "dark"):
        look.set_scheme(scheme)
        for spot in SPOTS:
            view.set_open(spot.id, "14")
            picture(view)
    # Once a scheme (light was there before), and once small to see where the machine is.
    assert len(rendered) <= 3


def test_going_from_item_to_item_takes_less_than_a_frame(look, stage):
    made = OutlineView(look, left())
    spread = [Spot(str(n), 100 + 37 * n, 150 + 61 * (n * 7 % 15), SPOTS[n % 5].sign, f"item {n}")
              for n in range(57)]  # fmt: skip
    made.set_spots(spread)
    stage(made, 362, made.heightForWidth(362))
    picture(made)
    took = []
    for spot in spread:
        start = process_time()
        made.set_open(spot.id, spot.id)
        made.grab()
        took.append(process_time() - start)
    # The middle one, since other work on the same machine makes single ones slow.
    assert sorted(took)[len(took) // 2] < 0.016


@pytest.mark.parametrize("name", VIEWS)
def test_every_view_is_one_drawing_with_the_same_groups(qapp, name):
    path = resource("outlines", f"{name}.svg")
    renderer = QSvgRenderer(str(path))
    assert renderer.isValid()
    assert {group for group in GROUPS if not renderer.elementExists(group)} == set()
    box = Drawing(path).box
    assert box.contains(renderer.boundsOnElement("machine"))


@pytest.mark.parametrize("name", VIEWS)
def test_a_drawing_takes_the_inks_of_the_scheme(name, scheme):
    inks = SCHEMES[scheme]
    text = Drawing(resource("outlines", f"{name}.svg")).coloured(inks, "line", 6.5)
    colours = {part[:7].upper() for part in text.split('"') if part.startswith("#")}
    assert colours == {inks.line.upper(), inks.paper.upper()}
    assert 'stroke-width="6.5"' in text


def test_a_thinner_stroke_thins_the_two_lines_of_a_tube_alike(qapp):
    drawing = Drawing(left())
    plain, thin = drawing.coloured(SCHEMES["light"]), drawing.coloured(SCHEMES["light"], stroke=6.5)
    assert 'stroke="#FBFAF6" stroke-width="25"' in plain
    # 40 wide outside: 40 - 2 x 7.5 = 25 of paper, and 40 - 2 x 6.5 = 27.
    assert 'stroke="#FBFAF6" stroke-width="27"' in thin


@pytest.mark.parametrize(("content", "words"), [
    (None, "cannot be read"), ("<svg/>", "has no viewBox"), (b"\xff\xfe\x00", "cannot be read"),
])  # fmt: skip
def test_a_file_that_is_no_drawing_is_refused_and_the_one_before_stays(view, tmp_path, content, words):
    path = tmp_path / "profile.svg"
    if isinstance(content, bytes):
        path.write_bytes(content)
    elif content is not None:
        path.write_text(content)
    before = view.drawing
    with pytest.raises(NoDrawing, match=f"profile.svg.*{words}"):
        view.set_drawing(path)
    assert view.drawing is before


def test_a_sign_stands_on_a_halo_of_paper(qapp, scheme):
    inks = SCHEMES[scheme]
    image = sign_on_halo("not seen", 40, 1.0, inks).toImage()
    assert image.height() == pytest.approx(40 * 1.34, abs=2)
    middle = image.height() // 2
    assert image.pixelColor(middle, 3) == inks.colour("paper")
    assert image.pixelColor(0, 0).alpha() == 0


def test_a_view_without_spots_takes_no_focus(look, qtbot):
    made = OutlineView(look, left())
    qtbot.addWidget(made)
    assert made.accessibleName() == "outline of the machine"
    assert made.focusPolicy() == Qt.FocusPolicy.NoFocus
    made.set_spots(SPOTS)
    assert made.focusPolicy() == Qt.FocusPolicy.StrongFocus
    assert made.near(QPointF(QPoint(-900, -900))) == []
