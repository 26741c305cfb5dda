"""What a person does about money, each as an unstarted step. Verbs that change an entry take the record as it is."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from decimal import Decimal
from typing import Any

from pydantic import JsonValue

from inspector.record import csv_cells as cells
from inspector.record.base import Piece
from inspector.record.days import FIRST_YEAR, LAST_YEAR, day_of, two_ways
from inspector.record.edits import Part, Put, Step
from inspector.record.finding import Photograph
from inspector.record.model import Record
from inspector.record.money import Adjustment, Comparable, Figures, IndexRow, Money, PartOffer, Rate, Remedy
from inspector.record.refusing import END, EditRefused, held
from inspector.record.verbs import drop_entry, put_entry
from inspector.record.words import Adjusts, PriceKind
from inspector.texts import Say, say

CHOSEN = {True: "Choose a way to put right", False: "Decline a way to put right", None: "Leave a way undecided"}


def set_money(field: str, value: JsonValue | Decimal) -> Step:
    """One setting about money; None takes it away. Amounts may be given as text or Decimal.

    Raises EditRefused with one clear sentence where the value cannot hold.
    """
    plain: JsonValue = str(value) if isinstance(value, Decimal) else value
    if plain is None and field in Money.model_fields:
        # What has no "not entered" goes back to empty.
        default = Money.model_fields[field].get_default()
        plain = list(default) if isinstance(default, tuple) else default
    if field == "currency" and plain:
        plain = currency_of(str(plain))
    if field == "effective_date" and plain and day_of(str(plain)) is None:
        raise EditRefused(no_day(str(plain)))
    plain = held(Money, {field: plain})[field]
    return Step(
        label="Money: " + field.replace("_", " "),
        puts=(Put(part=Part.MONEY, key=field, value=plain),),
        joins=f"money {field}",
    )


def set_rate(record: Record, currency: str, per_one: Decimal | None, date: str, instead_of: str = "") -> Step:
    """One unit of that currency worth so much in the currency told, on that day; None takes the rate away.

    It stands where the rate of this currency, or of ``instead_of``, stood; else last.
    """
    rates, currency = record.money.rates, currency_of(currency)
    at = next((n for n, rate in enumerate(rates) if rate.currency == (instead_of or currency)), len(rates))
    before, behind = rates[:at], rates[at + 1 :]
    if per_one is None:
        return _rows("rates", [*_others(before, currency), *_others(behind, currency)], f"Rate of {currency}")
    if day_of(date) is None:
        raise EditRefused(no_day(date))
    new = held(Rate, {"currency": currency, "per_one": str(per_one), "date": date})
    return _rows("rates", [*_others(before, currency), new, *_others(behind, currency)], f"Rate of {currency}")


def set_index(record: Record, year: int, value: Decimal | None, instead_of: int | None = None) -> Step:
    """One year of the price index, in place of ``instead_of`` too; None takes it away. Years stay in order."""
    rows = [r.model_dump(mode="json") for r in record.money.index if r.year not in {year, instead_of}]
    if value is not None:
        rows.append(held(IndexRow, {"year": year, "value": str(value)}))
    return _rows("index", sorted(rows, key=lambda row: row["year"]), f"Price index of {year}")


def count_also(record: Record, kind: PriceKind, counted: bool) -> Step:
    """Asked or bid prices counted besides those sold, or no longer."""
    kinds = [k.value for k in record.money.also_count if k is not kind]
    word = "Count" if counted else "Do not count"
    return _rows("also_count", [*kinds, kind.value] if counted else kinds, f"{word} prices {kind.value}")


def new_offer(record: Record, part: str = "") -> Step:
    """A part that is offered, still without a price, is noted last."""
    used = {offer.id for offer in record.money.offers}
    key = next(key for n in range(1, len(used) + 2) if (key := f"o{n}") not in used)
    made = held(PartOffer, {"id": key, "part": part})
    return _rows("offers", [*_as_kept(record.money.offers), made], "Offer of a part")


def change_offer(record: Record, key: str, **changes: Any) -> Step:
    """The offer with these fields changed. Raises EditRefused where it is not there or a value cannot hold."""
    offers = record.money.offers
    old = next((offer for offer in offers if offer.id == key), None)
    if old is None:
        raise EditRefused(say("That offer is no longer there. Nothing was changed."))
    _must_be_a_day(changes.get("date"))
    changes = _with_code(changes)
    new = held(PartOffer, {**old.model_dump(mode="json"), **changes})
    rows = [new if offer.id == key else kept for offer, kept in zip(offers, _as_kept(offers), strict=True)]
    step = _rows("offers", rows, "Offer of a part")
    return step.model_copy(update={"joins": f"offer {key} {'_'.join(sorted(changes))}"})


def drop_offer(record: Record, key: str) -> Step:
    """The record without that offer."""
    return _rows("offers", _as_kept(offer for offer in record.money.offers if offer.id != key), "Offer taken away")


def choose_remedy(record: Record, item: str, cost: str, chosen: bool | None) -> Step:
    """That way chosen, declined, or not decided; figures that were entered stay."""
    old = _remedy(record, item, cost)
    label = CHOSEN[chosen]
    if chosen is None and (old is None or old.figures is None):
        return drop_entry(Part.REMEDIES, f"{item}/{cost}", label=label)
    new = old.model_copy(update={"chosen": chosen}) if old else Remedy(item=item, cost=cost, chosen=chosen)
    return put_entry(Part.REMEDIES, new, label=label)


def set_figures(record: Record, item: str, cost: str, figures: Figures | None) -> Step:
    """The user's figures over the profile's at that way, or for a way of the user's own; None takes them away.

    Figures alone decide nothing: a way that was not decided stays so.
    """
    old = _remedy(record, item, cost)
    if figures is None and (old is None or old.chosen is None):
        return drop_entry(Part.REMEDIES, f"{item}/{cost}", label="Figures of a remedy taken away")
    new = Remedy(item=item, cost=cost, chosen=old.chosen if old else None, figures=figures)
    return put_entry(Part.REMEDIES, new, label="Figures of a remedy", joins=f"figures {item}/{cost}")


def figures(**fields: Any) -> Figures:
    """A remedy's figures as entered. Raises EditRefused with one clear sentence, as where low is above high."""
    return Figures.model_validate(held(Figures, _with_code(fields)))


def comparable(**fields: Any) -> Comparable:
    """A comparable as entered by hand. Raises EditRefused with one clear sentence, as for a price below nought."""
    _must_be_a_day(fields.get("date"))
    return Comparable.model_validate(held(Comparable, fields))


def new_comparable_id(record: Record) -> str:
    """An id that no comparable has."""
    used = {c.id for c in record.comparables}
    return next(key for n in range(1, len(used) + 2) if (key := f"c{n}") not in used)


def add_comparables(rows: Sequence[Comparable]) -> Step:
    """These comparables entered as one step. Raises EditRefused where there are none."""
    if not rows:
        raise EditRefused(say("There is no comparable to enter. Nothing was changed."))
    puts = tuple(Put(part=Part.COMPARABLES, key=row.id, value=row.model_dump(mode="json")) for row in rows)
    return Step(label="Comparable" if len(rows) == 1 else f"{len(rows)} comparables", puts=puts)


def change_comparable(record: Record, key: str, **changes: Any) -> Step:
    """The comparable with these fields changed. Raises EditRefused where it is not there or a value cannot hold."""
    old = next((c for c in record.comparables if c.id == key), None)
    if old is None:
        raise EditRefused(say("That comparable is no longer there. Nothing was changed."))
    value = held(Comparable, {**old.model_dump(mode="json"), **_with_code(changes)})
    field = "_".join(sorted(changes))
    return Step(label="Comparable", puts=(Put(part=Part.COMPARABLES, key=key, value=value),), joins=f"{key} {field}")


def add_pictures(record: Record, key: str, pictures: Sequence[Photograph]) -> Step:
    """The comparable with these pictures behind its own, each kept file once and tied to nothing of this machine.

    Raises EditRefused where the comparable is not there.
    """
    old = next((c.pictures for c in record.comparables if c.id == key), ())
    had = {picture.sha256 for picture in old}
    new = {p.sha256: _of_another(p, key) for p in pictures if p.sha256 not in had}
    step = change_comparable(record, key, pictures=_as_kept((*old, *new.values())))
    return step.model_copy(update={"label": "Picture of a comparable", "joins": ""})


def drop_picture(record: Record, key: str, picture: str) -> Step:
    """The comparable without that picture; its kept file stays, so that it can be undone."""
    old = next((c.pictures for c in record.comparables if c.id == key), ())
    step = change_comparable(record, key, pictures=_as_kept(p for p in old if p.id != picture))
    return step.model_copy(update={"label": "Picture of a comparable taken out", "joins": ""})


def exclude(record: Record, key: str, because: str) -> Step:
    """The comparable left out for that reason and kept in the list; an empty reason counts it again.

    Raises EditRefused where it is not there.
    """
    step = change_comparable(record, key, excluded_because=because.strip())
    label = "Leave a comparable out" if because.strip() else "Count a comparable again"
    return step.model_copy(update={"label": label})


def drop_comparable(record: Record, key: str) -> Step:
    """The record without that comparable and its adjustments."""
    own = [Put(part=Part.ADJUSTMENTS, key=a.id) for a in record.adjustments if a.comparable == key]
    return Step(label="Comparable taken away", puts=(*own, Put(part=Part.COMPARABLES, key=key)))


def adjust(
    comparable: str,
    what: Adjusts,
    *,
    amount: Decimal | None = None,
    percent: Decimal | None = None,
    reason: str = "",
) -> Step:
    """That adjustment of that comparable, in place of the one for the same; without a figure it is taken away.

    Raises EditRefused where both an amount and a percentage are given.
    """
    key = f"{comparable}-{what.value}"
    if amount is None and percent is None:
        return drop_entry(Part.ADJUSTMENTS, key, label=f"Adjustment for {what.value} taken away")
    if amount is not None and percent is not None:
        raise EditRefused(say("An adjustment is either an amount or a percentage. Nothing was changed."))
    given = {"id": key, "comparable": comparable, "what": what, "reason": reason, "amount": amount, "percent": percent}
    value = held(Adjustment, given)
    put = Put(part=Part.ADJUSTMENTS, key=key, value=value)
    return Step(label=f"Adjustment for {what.value}", puts=(put,), joins=f"adjust {key}")


def _of_another(picture: Photograph, key: str) -> Photograph:
    """The picture as one of another machine: what ties it to this one, and what was drawn on it, is left behind."""
    bare: dict[str, Any] = {"item": "", "place": "", "shot": "", "light": "", "cleaned": "", "scale_present": False}
    drawn: dict[str, Any] = {"marks": (), "measures": (), "masks": ()}
    return picture.model_copy(update={"id": f"{picture.sha256[:12]}-{key}"[:120], **bare, **drawn})


def _with_code(fields: dict[str, Any]) -> dict[str, Any]:
    """The same, a currency among them by its three letters."""
    return {**fields, "currency": currency_of(str(fields["currency"]))} if "currency" in fields else fields


def _must_be_a_day(date: object) -> None:
    if date and day_of(str(date)) is None:
        raise EditRefused(no_day(str(date)))


def no_day(text: str) -> Say:
    """Why what is written is taken for no day, and how to write one."""
    if two_ways(text):
        return say('"{text}" can be read two ways. Write it as 2025-06-05. {end}', text=text, end=END)
    return say(
        '"{text}" is not a day, month or year from {first} to {last}. Write it as 2025-06-05. {end}',
        text=text, first=str(FIRST_YEAR), last=str(LAST_YEAR), end=END,
    )  # fmt: skip


def currency_of(text: str) -> str:
    """The three letters of a currency written so, small or by its sign; "" where nothing is. Raises EditRefused."""
    try:
        return cells.currency(text)
    except cells.Unread as unread:
        raise EditRefused(say("{why} {end}", why=unread.sentence, end=END)) from unread


def _as_kept(entries: Iterable[Piece]) -> list[Any]:
    return [entry.model_dump(mode="json") for entry in entries]


def _others(rates: Sequence[Rate], currency: str) -> list[Any]:
    return _as_kept(rate for rate in rates if rate.currency != currency)


def _rows(field: str, rows: Sequence[Any], label: str) -> Step:
    return Step(label=label, puts=(Put(part=Part.MONEY, key=field, value=list(rows)),))


def _remedy(record: Record, item: str, cost: str) -> Remedy | None:
    return next((r for r in record.remedies if r.item == item and r.cost == cost), None)
