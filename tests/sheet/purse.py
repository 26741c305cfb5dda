"""An invented purse for the made machine: comparables, adjustments, and everything that makes a worth printable."""

from decimal import Decimal

from inspector.handover import PLAIN
from inspector.judgement.judge import judge
from inspector.judgement.money import money
from inspector.judgement.plan import chosen, frontier, planning
from inspector.record.money import Adjustment, Comparable, Money
from inspector.record.words import Adjusts, PriceKind
from inspector.sheet.history import Change
from inspector.sheet.money_blocks import Purse
from inspector.sheet.owner import Held, owner_sheet
from tests.sheet import made

SAID = {"purpose": "buying to keep", "kind_of_value": "between two people", "effective_date": "2025-05-17",
        "in_the_name_of": "A. Teasel"}  # fmt: skip
HISTORY = (
    Change("2025-05-17T10:05:00+01:00", "inspector", "do", "Mark fail", "Front wheel"),
    Change("2025-05-17T10:06:00+01:00", "inspector", "do", "Note", "Fuel tank"),
    Change("2025-05-17T10:07:00+01:00", "inspector", "do", "Note", "Fuel tank"),
    Change("2025-05-17T10:08:00+01:00", "inspector", "undo", "Note", "Fuel tank"),
)


def filled(record, **more):
    """The record with three sales counted, one asking price and one left out."""
    told = ((PriceKind.SOLD, 9900, "club sale", 4, ""), (PriceKind.SOLD, 11800, "auction in Marsham", 3, ""),
            (PriceKind.SOLD, 8700, "private sale", 3, ""), (PriceKind.ASKED, 13900, "dealer", 3, ""),
            (PriceKind.SOLD, 2100, "basket case", 1, "Parts only."))  # fmt: skip
    sales = tuple(
        Comparable(id=f"c{n}", kind=kind, price=Decimal(price), currency="GBP", title=title, date="2025-03-10",
                   how_like=like, excluded_because=why)
        for n, (kind, price, title, like, why) in enumerate(told)
    )  # fmt: skip
    step = Adjustment(id="a", comparable="c0", what=Adjusts.CONDITION, amount=Decimal(-300), reason="fresher paint")
    amounts = {"price_asked": 7400, "transport": 180, "margin": 1200, "target": 6700}
    figures = {"currency": "GBP", **{name: Decimal(amount) for name, amount in amounts.items()}}
    purse = Money(**{**figures, **SAID, **more})
    return record.model_copy(update={"comparables": sales, "adjustments": (step,), "money": purse})


def owner(record, profile=None, pictures=None, outline=None):
    """The owner's file of that record."""
    profile = profile or made.profile()
    judged = judge(profile, record)
    work = planning(profile, record, judged.states)
    purse = Purse(money(profile, record, judged.states), chosen(work, record.money.budget), frontier(work), PLAIN)
    store = made.store(record) if pictures is None else pictures
    return owner_sheet(profile, record, judged, Held(store, outline, purse, HISTORY), made.MADE_AT, 1)
