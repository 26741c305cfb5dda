"""Money is worked by finger, mouse and keyboard alike; tables come by dropping and typing."""

import pytest
from PySide6.QtCore import QMimeData, QPoint, QPointF, Qt, QUrl
from PySide6.QtGui import QDragEnterEvent, QDropEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from tests.window.money.hands import TABLE, figures_at, fill, go, pick, words_of


@pytest.fixture
def screen(qapp):
    """A screen that feels fingers, on which no two touches of a test are taken for one double touch."""
    before = QApplication.doubleClickInterval()
    QApplication.setDoubleClickInterval(0)
    yield QTest.createTouchDevice()
    QApplication.setDoubleClickInterval(before)


def touch(widget, screen):
    """One finger put down in the middle of the widget and lifted."""
    middle = widget.rect().center()
    QTest.touchEvent(widget.window(), screen).press(1, middle, widget).commit()
    QTest.touchEvent(widget.window(), screen).release(1, middle, widget).commit()
    QApplication.processEvents()


def test_a_finger_hides_it_and_brings_it_back(house, money, screen):
    touch(money.hide_key, screen)
    assert money.blank.isVisible()
    touch(money.blank.key, screen)
    assert money.content.isVisible()


def test_a_finger_opens_a_view_and_decides_for_a_way(house, money, screen):
    touch(money.nav.key("remedies"), screen)
    house.settle()
    view = money.views["remedies"]
    view.open_at("fuel-tank")
    house.settle()
    key = view.ways.cards["tank-find"].decide.key("yes")
    house.reach(key)
    before = view.costs.table.accessibleName()
    touch(key, screen)
    assert any(r.cost == "tank-find" and r.chosen for r in house.record.remedies)
    assert view.costs.table.accessibleName() != before


def test_the_keyboard_alone_chooses_a_way(house, money):
    money.open("remedies")
    view = money.views["remedies"]
    view.open_at("front-brake")
    house.settle()
    card = view.ways.cards[next(iter(view.ways.cards))]
    card.decide.key("open").setFocus(Qt.FocusReason.TabFocusReason)
    house.key(Qt.Key.Key_Left)
    house.key(Qt.Key.Key_Space)
    house.settle()
    assert [(r.cost, r.chosen) for r in house.record.remedies] == [(card.cost, False)]
    house.key(Qt.Key.Key_Left)
    house.key(Qt.Key.Key_Return)
    house.settle()
    assert [(r.cost, r.chosen) for r in house.record.remedies] == [(card.cost, True)]


def test_a_file_with_a_table_is_dropped(house, money, tmp_path):
    (tmp_path / "prices.csv").write_text(TABLE, "utf-8")
    house.drop(money, [tmp_path / "prices.csv"])
    house.settle()
    assert money.view == "comparables"
    assert len(house.record.comparables) == 6
    house.window.undo()
    assert house.record.comparables == ()


def test_a_file_that_is_no_table_says_so_and_changes_nothing(house, money, tmp_path):
    (tmp_path / "prices.csv").write_bytes(b"\xff\xfe\x00price")
    house.drop(money, [tmp_path / "prices.csv"])
    part = money.views["comparables"].table
    assert "prices.csv" in part.done.words
    part.enter_file(tmp_path / "gone.csv")
    assert "gone.csv" in part.done.words
    assert house.record.comparables == ()


def test_lines_of_text_are_dropped(house, money):
    mime = QMimeData()
    mime.setText(TABLE)
    how = Qt.DropAction.CopyAction, mime, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier
    QApplication.sendEvent(money, QDragEnterEvent(QPoint(200, 200), *how))
    QApplication.sendEvent(money, QDropEvent(QPointF(200, 200), *how))
    house.settle()
    assert len(house.record.comparables) == 6


def test_one_comparable_is_entered_by_hand_and_adjusted_step_by_step(house, money):
    view = go(house, "comparables")
    house.press(view.list.add_one)
    house.settle()
    form = view.form
    assert "Without a price" in view.list.rows[form.key].second
    house.type(form.price, "9,937")
    house.type(form.words["date"], "March 2025")
    house.type(form.words["place"], "club sale")
    pick(house, form.like, "5")
    one = house.record.comparables[0]
    assert (str(one.price), one.date, one.place, one.how_like) == ("9937", "2025-03", "club sale", 5)
    amount, why = form.adjusting.lines["condition"]
    house.type(amount, "-5 %")
    house.type(why, "better paint")
    assert "-5" in str(house.record.adjustments[0].percent)
    told = form.steps.accessibleName()
    assert "better paint" in told
    assert "−496.85" in told
    assert "9,440.15" in told
    house.type(form.words["date"], "2031-01-01")
    assert "future" in form.words["date"].note.words
    assert house.record.comparables[0].date == "2025-03"
    house.type(form.price, "-9937")
    assert "at least 0" in form.price.note.words
    house.press(form.drop)
    assert house.record.comparables == ()
    assert house.record.adjustments == ()


def test_a_pause_in_the_middle_of_a_figure_does_not_change_what_is_written_next(house, money):
    view = go(house, "figures")
    field = view.fields["price_asked"]
    house.press(field.control)
    house.qtbot.keyClicks(field.control, "7400")
    house.qtbot.waitUntil(lambda: house.record.money.price_asked == 7400)  # kept by the pause
    house.qtbot.keyClicks(field.control, "0")
    house.key(Qt.Key.Key_Tab)
    assert house.record.money.price_asked == 74000
    view = go(house, "deal")
    view = go(house, "figures")
    assert view.fields["price_asked"].value() == "74,000"


def test_another_currency_waits_for_a_dated_rate(house, money):
    view = go(house, "comparables")
    view.table.enter("kind;price;currency;title\nsold;9000;EUR;Heron 600\n")
    assert "No rate for EUR" in view.list.rows["c1"].second
    figures = go(house, "figures")
    currency, per_one, day = figures.rates.fields[0]
    house.type(currency, "EUR")
    house.type(per_one, "0.85671")
    house.type(day, "some day")
    assert "is not a day" in figures.rates.note.words
    assert house.record.money.rates == ()
    house.type(day, "2025-05-01")
    assert str(house.record.money.rates[0].per_one) == "0.85671"
    assert len(figures.rates.fields) == 2
    view = go(house, "comparables")
    assert view.list.rows["c1"].aside == "7,710"


def test_what_is_written_for_one_machine_is_not_shown_for_another(house, money):
    fill(house)
    field = go(house, "figures").fields["price_asked"]
    house.type(field, "no figure")
    record = house.record.id
    house.desk.close()
    assert house.desk.open(record, "money")
    house.settle()
    assert field.value() == "7,411"


def test_a_rate_under_another_currency_takes_the_place_of_the_old_one(house, money):
    figures = go(house, "figures")
    for line, words in ((0, ("EUR", "0.86", "2025-05-01")), (1, ("USD", "0.75", "2025-05-01"))):
        for field, word in zip(figures.rates.fields[line], words, strict=True):
            house.type(field, word)
    house.type(figures.rates.fields[0][0], "CHF")
    assert [(r.currency, str(r.per_one)) for r in house.record.money.rates] == [("CHF", "0.86"), ("USD", "0.75")]
    assert [line[0].value() for line in figures.rates.fields] == ["CHF", "USD", ""]


def test_a_line_that_is_not_whole_says_what_is_still_to_be_written_and_keeps_what_is(house, money):
    figures = go(house, "figures")
    house.type(figures.fees.fields[0][0], "Papers")
    assert "Still to be written in this line: Amount" in figures.fees.note.words
    house.type(figures.fields["transport"], "187")
    assert figures.fees.fields[0][0].value() == "Papers"
    house.type(figures.fees.fields[0][1], "55")
    assert not figures.fees.note.isVisible()
    assert [(fee.name, fee.amount) for fee in house.record.money.fees] == [("Papers", 55)]


def test_a_part_offered_stands_beside_the_price_expected_and_in_the_wants_list(house, money):
    fill(house)
    view = go(house, "say")
    house.press(view.offers.another)
    house.settle()
    (card,) = view.offers.cards.values()
    pick(house, card.part, "fuel-tank/tank-find")
    house.type(card.price, "500")
    house.type(card.by, "stall 14")
    assert "60 below the likely 560, within 380 to 850." in card.words.words
    assert "Price notes of the register" in card.whose.words
    house.type(card.expected, "450")
    assert card.words.words == "50 above the likely 450."
    house.type(card.price, "-3")
    assert "at least 0" in card.price.note.words
    assert card.price.value() == "-3"
    assert [(o.part, str(o.price), o.by) for o in house.record.money.offers] == [
        ("fuel-tank/tank-find", "500", "stall 14")]  # fmt: skip
    wanted = go(house, "wants")
    assert "stall 14. 50 above the likely 450." in words_of(wanted)
    view = go(house, "say")
    house.press(card.drop)
    assert house.record.money.offers == ()


def test_how_long_a_part_takes_to_come_is_the_persons_to_change(house, money):
    card = figures_at(house, "rear-tyre")
    house.type(card.form.weeks[0], "3")
    assert "at least and at most" in card.form.trouble.words
    house.type(card.form.weeks[1], "5")
    assert "said to take 3 to 5 weeks" in card.more.words
    assert house.record.remedies[0].figures.lead_weeks == (3, 5)


def test_a_file_with_a_table_is_pasted_and_a_path_alone_is_no_table(house, money, tmp_path):
    (tmp_path / "prices.csv").write_text(TABLE, "utf-8")
    mime = QMimeData()
    mime.setUrls([QUrl.fromLocalFile(str(tmp_path / "prices.csv"))])
    QApplication.clipboard().setMimeData(mime)
    money.paste()
    house.settle()
    assert len(house.record.comparables) == 6
    other = QMimeData()
    other.setUrls([QUrl.fromLocalFile(str(tmp_path / "notes.odt"))])
    other.setText(str(tmp_path / "notes.odt"))
    QApplication.clipboard().setMimeData(other)
    money.open("deal")
    money.paste()
    assert money.view == "deal"
    assert len(house.record.comparables) == 6


def test_the_deal_names_all_that_is_not_in_its_sum(house, money):
    deal = go(house, "deal")
    (told,) = deal.not_in_it.told
    for words in ("items to decide first", "items with no known way", "items in doubt without a way",
                  "all labour, since no rate is entered", "transport, since none is entered"):  # fmt: skip
        assert words in told
    figures = go(house, "figures")
    house.type(figures.fields["labour_rate"], "47")
    house.type(figures.fields["transport"], "0")
    (told,) = go(house, "deal").not_in_it.told
    assert "labour" not in told
    assert "transport" not in told
