"""Calliper in the right hand: one reading after the other, and three small tools for what it can be."""

import pytest
from PIL import Image, ImageDraw
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QPointingDevice
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from skimage import color

from inspector.record.finding import Measured
from inspector.record.material import Magnet, Material, Sound
from inspector.record.words import Evidence, Mark, Seen
from tests.window.walked import begin

GREEN, GREY = (30, 70, 40), (200, 200, 200)
ENTER = Qt.Key.Key_Return


@pytest.fixture
def walk(house):
    """The walk of a machine claimed as of 1953."""
    house.build()
    begin(house)
    house.page("walk")
    house.settle()
    return house


def go_to_measure(house, measure):
    """The item with that measure is open."""
    desk = house.desk
    wanted = (i for i in desk.walk if any(m.id == measure for m in desk.profile.item_by_id[i].measures))
    desk.go_to(next(wanted))
    house.settle()


def drawers(house):
    return house.walk.item.drawers


def open_measure(house, measure):
    go_to_measure(house, measure)
    press(house, drawers(house).keys["measure"])
    house.settle()
    return drawers(house).measuring


def press(house, widget):
    """Pressed once everything stands where it belongs."""
    house.settle()
    house.press(widget)


def measured(house, measure):
    found = house.finding()
    return next((m for m in (found.measured if found else ()) if m.measure == measure), None)


def write(house, text):
    """Typed at the keyboard into what has the focus."""
    QTest.keyClicks(QApplication.focusWidget(), text)


def pad(house, *words):
    for word in words:
        press(house, drawers(house).measuring.pad.keys[word])


def test_three_readings_by_keys_alone_are_kept_each_at_enter(walk):
    go_to_measure(walk, "guard-depth")
    walk.key(Qt.Key.Key_M)
    walk.settle()
    body = drawers(walk).measuring
    for n, text in enumerate(("84", "83.5", "84,0")):
        assert body.fields[n].edit.hasFocus()
        write(walk, text)
        walk.key(ENTER)
    assert measured(walk, "guard-depth") == Measured(
        measure="guard-depth", readings=("84", "83.5", "84,0"), unit="mm", instrument="",
    )  # fmt: skip
    assert not body.fields[2].edit.hasFocus()
    assert body.outcome.spread.words == "Mean 84 mm, spread 1 mm."  # read to a millimetre, so half of one is not shown
    item = walk.desk.item
    walk.key(ENTER)
    assert walk.desk.item != item


def test_the_pad_writes_a_fraction_with_cold_fingers_and_the_keys_stay_where_they_are(walk):
    body = open_measure(walk, "stanchion")
    pad(walk, "1", "space", "5", "/", "1", "6")
    assert body.fields[0].value() == "1 5/16"
    walk.reach(body.pad.keys["onward"])
    before = body.pad.keys["7"].mapTo(walk.window, QPoint(0, 0))
    pad(walk, "onward")
    walk.settle()
    assert measured(walk, "stanchion").readings == ("1 5/16",)
    assert body.pad.keys["7"].mapTo(walk.window, QPoint(0, 0)) == before
    assert body.fields[1].edit.hasFocus()
    pad(walk, "2", "back", "1", ".", "3", "1", "2", "in", "onward")
    assert measured(walk, "stanchion").readings == ("1 5/16", "1.312 in")


def test_the_pad_is_worked_by_touch(walk):
    device = QTest.createTouchDevice()
    assert isinstance(device, QPointingDevice)
    body = open_measure(walk, "guard-depth")
    for word in ("8", "4", "onward"):
        key = body.pad.keys[word]
        walk.reach(key)
        at = key.rect().center()
        QTest.touchEvent(key, device).press(0, at, key).commit()
        QTest.touchEvent(key, device).release(0, at, key).commit()
        walk.settle()
    walk.qtbot.waitUntil(lambda: measured(walk, "guard-depth") is not None)
    assert measured(walk, "guard-depth").readings == ("84",)


def test_what_is_no_length_stays_in_its_field_with_one_sentence_and_the_others_are_kept(walk):
    body = open_measure(walk, "guard-depth")
    write(walk, "84")
    walk.key(ENTER)
    write(walk, "about 83")
    walk.key(ENTER)
    assert body.fields[1].edit.hasFocus()
    assert body.outcome.wrong.words.startswith("“about 83” is not a measure.")
    assert body.outcome.wrong.isVisible()
    assert measured(walk, "guard-depth").readings == ("84",)
    item = walk.desk.item
    press(walk, walk.walk.item.next)
    walk.desk.go_to(item)
    press(walk, drawers(walk).keys["measure"])
    assert body.fields[1].value() == "about 83"
    walk.type(body.fields[1], "83")
    assert not body.outcome.wrong.isVisible()
    assert measured(walk, "guard-depth").readings == ("84", "83")


def test_teeth_are_not_typed_in_millimetres(walk):
    body = open_measure(walk, "sprocket")
    assert not body.units.isVisible()
    write(walk, "45 mm")
    walk.key(ENTER)
    assert body.outcome.wrong.words == "This measure is told in teeth, not in a length."
    assert measured(walk, "sprocket") is None


def test_a_reading_is_undone_and_done_again(walk):
    body = open_measure(walk, "guard-depth")
    write(walk, "84")
    walk.key(ENTER)
    walk.window.undo()
    assert measured(walk, "guard-depth") is None
    assert body.fields[0].value() == ""
    walk.window.redo()
    assert body.fields[0].value() == "84"


def test_a_measure_that_names_one_form_offers_it_and_presses_nothing(walk):
    body = open_measure(walk, "guard-depth")
    form, value = only_form(walk)
    write(walk, f"{value:.2f}")
    walk.key(ENTER)
    found = walk.finding()
    assert (found.fitted, found.mark, found.evidence) == ("", None, ())
    assert f"fits “{form.name}”" in body.outcome.sentence.words
    assert form.name in body.outcome.fitted.title
    assert body.outcome.proposal.words.startswith("Proposed by the measure:")
    press(walk, body.outcome.fitted)
    found = walk.finding()
    assert (found.fitted, found.mark, found.evidence) == (form.id, None, (Evidence.MEASUREMENT,))
    assert not body.outcome.fitted.isVisible()
    walk.window.undo()
    assert (walk.finding().fitted, walk.finding().evidence) == ("", ())
    assert measured(walk, "guard-depth") is not None


def only_form(house):
    item = house.desk.profile.item_by_id[house.desk.item]
    nominal = next(n for n in item.measures[0].nominals if n.variant)
    return next(v for v in item.variants if v.id == nominal.variant), nominal.value


def test_why_it_says_so_stands_behind_a_key_with_the_published_values_and_their_sources(walk):
    body = open_measure(walk, "guard-depth")
    write(walk, "84")
    walk.key(ENTER)
    assert not body.outcome.reasons.isVisible()
    press(walk, body.outcome.why)
    said = [w.accessibleName() for w in body.outcome.reasons.widgets()]
    assert any("probability" in one for one in said)
    assert any("factory list" in one or "register" in one or "manual" in one for one in said)


def test_a_screen_says_within_or_without_and_gives_no_verdict(walk):
    body = open_measure(walk, "plunger-play")
    write(walk, "9")
    walk.key(ENTER)
    assert body.screening.isVisible()
    assert "no verdict" in body.screening.words
    assert "outside the limits" in body.outcome.sentence.words
    assert not body.outcome.proposal.isVisible()
    assert not body.outcome.fitted.isVisible()


def test_the_instrument_is_picked_once_and_used_again_and_the_typed_sign_wins(walk):
    body = open_measure(walk, "guard-depth")
    body.instrument.open()
    press(walk, next(r for r in body.instrument.list.rows if r.property("option") == "calliper"))
    assert measured(walk, "guard-depth") is None  # nothing was read yet
    body.begin()
    write(walk, "3.312 in")
    walk.key(ENTER)
    assert measured(walk, "guard-depth").instrument == "calliper"
    assert body.outcome.sentence.words.startswith("84.12 mm")  # 3.312 in is 84.1248 mm: 25.4 mm to the inch exactly
    press(walk, body.units.key("in"))
    assert measured(walk, "guard-depth").unit == "in"
    body = open_measure(walk, "pad-length")
    assert body.instrument.title == "calliper, 0.05 mm"


def test_an_instrument_of_ones_own_is_kept_with_what_it_may_be_wrong_by(walk):
    body = open_measure(walk, "guard-depth")
    write(walk, "84")
    walk.key(ENTER)
    body.instrument.open()
    press(walk, next(r for r in body.instrument.list.rows if r.property("option") == "own"))
    walk.type(body.own, "none")
    assert body.own.note.isVisible()
    walk.type(body.own, "0.3")
    assert measured(walk, "guard-depth").instrument == "own ± 0.3 mm"
    assert body.instrument.title == "own, within 0.3 mm"
    assert not body.own.isVisible()


def test_an_item_without_measures_has_no_such_key_and_says_so_to_the_keyboard(walk):
    bare = next(i for i in walk.desk.walk if not walk.desk.profile.item_by_id[i].measures)
    walk.desk.go_to(bare)
    walk.settle()
    assert not drawers(walk).keys["measure"].isVisible()
    walk.key(Qt.Key.Key_M)
    assert walk.says() == "The profile names no measure here."


def test_two_people_read_for_themselves(walk):
    body = open_measure(walk, "guard-depth")
    write(walk, "84")
    walk.key(ENTER)
    walk.desk.speak_as("ben")
    assert body.fields[0].value() == ""
    body.begin()
    write(walk, "90")
    walk.key(ENTER)
    assert walk.record.finding(walk.desk.item, "ben").measured[0].readings == ("90",)
    assert measured(walk, "guard-depth").readings == ("84",)


def test_what_was_measured_stands_in_judgement_and_on_the_sheet(walk):
    from inspector.sheet.finding import measured_words

    open_measure(walk, "guard-depth")
    form, value = only_form(walk)
    write(walk, f"{value:.1f}")
    walk.key(ENTER)
    (line,) = walk.desk.judgement.measured
    assert line.variant == form.id
    item = walk.desk.profile.item_by_id[walk.desk.item]
    assert f"fits “{form.name}”" in measured_words(item, walk.finding())


# what it can be


def open_tool(house, tool):
    body = drawers(house).can
    if not body.isVisible():
        press(house, drawers(house).keys["can"])
        house.settle()
    if not (tool in body.tools and body.tools[tool].isVisible()):
        press(house, body.keys.key(tool))
    house.settle()
    return body.tools[tool]


def test_a_thread_keeps_its_twins_and_goes_into_the_note_but_into_no_mark(walk):
    tool = open_tool(walk, "thread")
    walk.type(tool.diameter, "6.2")
    walk.type(tool.pitch, "26")
    assert tool.said.sentence.words == "Cannot separate 1/4 BSF and 1/4 cycle at this accuracy."
    said = " ".join(w.words for w in tool.said.more.widgets())
    assert "3/16 Whitworth" in said  # the spanner
    assert "BS 84" in said  # the sources
    press(walk, tool.said.key)
    found = walk.finding()
    assert found.note.startswith("Thread: Cannot separate 1/4 BSF and 1/4 cycle")
    assert found.mark is None
    press(walk, tool.said.key)
    assert walk.finding().note == found.note  # once is enough
    press(walk, tool.how.key("mm"))
    assert "1/4 BSF" not in tool.said.sentence.words


@pytest.mark.parametrize(("diameter", "pitch"), [("thick", "26"), ("6.2", "none"), ("6.2", "0")])
def test_what_is_no_thread_gets_one_sentence(walk, diameter, pitch):
    tool = open_tool(walk, "thread")
    walk.type(tool.diameter, diameter)
    walk.type(tool.pitch, pitch)
    assert [f.note.words for f in (tool.diameter, tool.pitch) if f.note.isVisible()]
    assert not tool.said.key.isVisible()


def tyre(house):
    profile = house.desk.profile
    house.desk.go_to(next(i for i in house.desk.walk if (s := profile.item_by_id[i].safety) and s.value == "tyre"))
    house.settle()


def test_at_a_tyre_its_tool_comes_first_and_the_decade_stays_open(walk):
    tyre(walk)
    walk.key(Qt.Key.Key_I)
    walk.settle()
    tool = drawers(walk).can.tools["tyre"]
    assert tool.isVisible()
    assert drawers(walk).can.keys.keys[0].title == "tyre"
    walk.type(tool.code, "317")
    assert tool.said.sentence.words.startswith("Made in week 31 of 1977, 1987 or 1997: the decade is not stamped.")
    assert "replace at 10 years" in tool.said.more.widgets()[0].words
    press(walk, tool.said.key)
    found = walk.finding()
    assert found.note.startswith("Tyre code 317: Made in week 31")
    assert found.evidence == (Evidence.DATE_CODE,)
    assert (found.mark, found.unsafe) == (None, False)
    walk.window.undo()
    assert walk.finding() is None


def test_sizes_about_the_same_are_no_leave_to_interchange(walk):
    tyre(walk)
    tool = open_tool(walk, "tyre")
    walk.type(tool.marked, "3.50-19")
    said = " ".join(w.words for w in tool.same.more.widgets())
    assert "At the front: MM90, 100/90 and 3.25-3.50 are about the same size." in said
    assert "no leave to interchange" in said
    assert "wcpmx.com" in said
    walk.type(tool.marked, "9.99")
    assert tool.marked.note.words == "The table has no size like this one."
    walk.type(tool.code, "9930")
    assert "does not exist" in tool.code.note.words


def two_colours(path):
    """A part in dark green beside a card in light grey; drawn here."""
    image = Image.new("RGB", (800, 600), GREEN)
    ImageDraw.Draw(image).rectangle((400, 0, 800, 600), fill=GREY)
    image.save(path)
    return path


def test_two_spots_in_a_photograph_give_a_difference_as_an_indication(walk, tmp_path):
    walk.walk.item.photographs.take_in([two_colours(tmp_path / "part.png")])
    walk.settle()
    tool = open_tool(walk, "colour")
    walk.settle()
    assert "indication only" in tool.warning.words
    spots = tool.picture
    walk.reach(spots)
    room = spots._target()
    walk.qtbot.mouseClick(spots, Qt.MouseButton.LeftButton, pos=room.center().toPoint() - QPoint(40, 0))
    assert tool.said.sentence.words == ""
    press(walk, tool.where.key("reference"))
    walk.reach(spots)
    walk.qtbot.mouseClick(spots, Qt.MouseButton.LeftButton, pos=room.center().toPoint() + QPoint(40, 0))
    labs = [color.rgb2lab([[[c / 255 for c in rgb]]]) for rgb in (GREEN, GREY)]
    apart = color.deltaE_ciede2000(*labs).item()  # scikit-image
    said = float(tool.said.sentence.words.split(" are ")[1].split()[0])
    assert said == pytest.approx(apart, abs=1)  # the working copy is a JPEG
    press(walk, tool.said.key)
    found = walk.finding()
    assert found.note.startswith("Colour, an indication only: The two patches are")
    assert (found.mark, found.evidence, found.seen) == (None, (), Seen.EXAMINED)


def test_arrows_set_and_move_a_spot(walk, tmp_path):
    walk.walk.item.photographs.take_in([two_colours(tmp_path / "part.png")])
    walk.settle()
    spots = open_tool(walk, "colour").picture
    walk.settle()
    spots.setFocus(Qt.FocusReason.TabFocusReason)
    walk.key(Qt.Key.Key_Right)
    assert spots.spots[0] == QPointF(0.5, 0.5)
    walk.key(Qt.Key.Key_Left, Qt.KeyboardModifier.ShiftModifier)
    assert spots.spots[0].x() == pytest.approx(0.5 - 10 / 800)
    assert set(spots.pixels(0)) <= {(r, g, b) for r, g, b in spots.pixels(0) if g > r}


def test_without_a_photograph_the_colour_says_what_to_do(walk):
    tool = open_tool(walk, "colour")
    assert tool.none.isVisible()
    assert not tool.picture.isVisible()


def asks_for_a_magnet(house):
    """The first item of the walk to which the profile says to bring a magnet, and one without."""
    by_id = house.desk.profile.item_by_id
    with_ = next(i for i in house.desk.walk if "magnet" in by_id[i].bring)
    return with_, next(i for i in house.desk.walk if "magnet" not in by_id[i].bring)


def test_plastic_where_steel_was_is_entered_as_a_finding(walk):
    walk.desk.go_to(asks_for_a_magnet(walk)[1])
    item = drawers(walk)
    press(walk, item.keys["how"])
    assert not item.material.isVisible()
    press(walk, item.evidence.key(Evidence.MATERIAL.value))
    walk.settle()
    last = item.material.keys["beneath"].key("underside cannot be seen")
    assert last.visibleRegion().boundingRect() == last.rect()
    for look, word in (("magnet", "magnet does not stick"), ("sound", "sounds of plastic")):
        press(walk, item.material.keys[look].key(word))
    press(walk, walk.walk.item.marks.key(Mark.FAIL.value))
    found = walk.finding()
    assert (found.evidence, found.mark) == ((Evidence.MATERIAL,), Mark.FAIL)
    assert (found.fitted_other, found.note) == ("", "")
    assert found.material == Material(magnet=Magnet.FALLS, sound=Sound.PLASTIC)
    assert "thick filler keeps it off steel" in item.material.beware.words
    assert item.keys["how"].title == "material, magnet does not stick, sounds of plastic"
    press(walk, item.material.keys["sound"].key("sounds of plastic"))
    assert walk.finding().material == Material(magnet=Magnet.FALLS)
    walk.desk.undo()
    assert walk.finding().material.sound is Sound.PLASTIC


def test_where_the_profile_asks_for_a_magnet_the_looks_stand_ready(walk):
    walk.desk.go_to(asks_for_a_magnet(walk)[0])
    item = drawers(walk)
    press(walk, item.keys["how"])
    assert item.material.isVisible()
    press(walk, item.material.keys["magnet"].key("magnet sticks"))
    assert walk.finding().evidence == (Evidence.MATERIAL,)
    assert walk.finding().mark is None
    assert "does not tell whether it is original" in item.material.beware.words
