"""Hands that fill in Money, and eyes that look for figures."""

import re
from decimal import Decimal

from PySide6.QtWidgets import QLabel, QLineEdit, QPlainTextEdit

from inspector.record import verbs_money as verbs
from inspector.record.csv_in import read_comparables
from tests.window.walked import shown

# Invented: no such sale was held.
TABLE = """kind,price,currency,date,place,fees,condition,numbers,score,like,title
sold,9937,GBP,2025-03-08,club sale,in,4,yes,88,5,Heron 600 of 1953
sold,11871,GBP,2025-01-18,auction,in,5,yes,95,4,Heron 600 of 1954
bid,10433,GBP,2025-04-02,auction,10,4,no,82,4,Heron 600 of 1952
asked,13919,GBP,2025-05-04,dealer,in,4,yes,90,3,Heron 650
sold,7643,GBP,2024-09-01,club sale,in,3,no,64,4,Heron 600 of 1950
sold,8969,GBP,2024-11-20,private,in,3,yes,75,4,Heron 600 of 1955
"""
SETTINGS = {
    "price_asked": "7411", "transport": "187", "labour_rate": "47", "margin": "1213", "limit_all_in": "12097",
    "premium_percent": "15", "tax_percent": "20", "purpose": "buying to keep", "effective_date": "2025-05-17",
    "percent_a_year": "3", "percent_a_point": "0.8", "opening": "6011", "target": "6607", "walk_away": "7027",
    "budget": "1207",
}  # fmt: skip


def fill(house):
    """Settings and comparables are entered without a hand having touched anything."""
    desk = house.desk
    for field, value in SETTINGS.items():
        assert desk.do(verbs.set_money(field, value))
    read = read_comparables(TABLE)
    assert not read.errors
    assert desk.do(verbs.add_comparables(read.rows))
    assert desk.do(verbs.choose_remedy(desk.record, "fuel-tank", "tank-find", True))
    house.settle()


def fill_whole(house):
    """As ``fill``; besides a fee, a rate, an index, a price level, pictures of a comparable and a part offered."""
    fill(house)
    desk = house.desk
    level = {"low": "-5", "likely": "0", "high": "20"}
    for step in (
        lambda: verbs.set_money("fees", [{"name": "Papers and a day's parking", "amount": "55"}]),
        lambda: verbs.set_money("price_level", level), lambda: verbs.set_money("contingency_percent", "10"),
        lambda: verbs.set_rate(desk.record, "EUR", Decimal("0.86"), "2025-05-01"),
        lambda: verbs.set_index(desk.record, 2025, Decimal(100)),
        lambda: verbs.add_pictures(desk.record, "c1", desk.record.photographs[:3]),
        lambda: verbs.new_offer(desk.record, "fuel-tank/tank-find"),
        lambda: verbs.change_offer(desk.record, "o1", price="500", by="the stall at the gate", date="2025-06-01"),
        lambda: verbs.new_offer(desk.record),
    ):  # fmt: skip
        assert desk.do(step())
    house.settle()


def go(house, view):
    """The view is opened by its key; gives it."""
    page = house.window.pages["money"]
    house.press(page.nav.key(view))
    house.settle()
    assert page.view == view
    return page.views[view]


def figures_at(house, item):
    """The card of the one way at that item, its fields open to be written over."""
    view = go(house, "remedies")
    view.open_at(item)
    house.settle()
    (card,) = view.ways.cards.values()
    house.press(card.change)
    return card


def pick(house, field, option):
    """The field's list is opened and one of its words touched."""
    house.press(field.key)
    row = next(row for row in field.key.list.rows if row.property("option") == option)
    house.press(row)
    house.settle()


def words_of(widget):
    """Everything that can be read on the widget, by eye or by a screen reader."""
    told = []
    for one in (widget, *shown(widget)):
        told += [one.accessibleName(), one.accessibleDescription(), one.toolTip(), one.windowTitle()]
        if isinstance(one, QLabel | QLineEdit):
            told.append(one.text())
        if isinstance(one, QPlainTextEdit):
            told.append(one.toPlainText())
        told.append(str(getattr(one, "words", "")))
    return "\n".join(word for word in told if word)


def figures_in(text):
    """Every run of figures, with what parts its groups left out."""
    return set(re.findall(r"\d+(?:[.,]\d+)*", text.replace("\u00a0", "")))
