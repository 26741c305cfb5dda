"""A small invented profile with remedies and strip-downs, and records about money."""

from decimal import Decimal

from inspector.record.money import Comparable, Money
from tests.judgement.make import found, item, profile, record

D = Decimal


def way(cost_id, parts=(10, 20, 30), hours=(1, 2, 3), **more):
    return {
        "id": cost_id, "name": cost_id.replace("-", " ").capitalize(), "kind": "used", "need": "claim",
        "currency": "GBP", "priced_on": "2025-05", "parts": parts, "hours": hours, **more,
    }  # fmt: skip


def job(job_id, hours=(1, 2, 3), needs=()):
    return {"id": job_id, "name": job_id.replace("-", " ").capitalize(), "hours": hours, "needs": needs}


def shop(items, jobs=(), **more):
    """A profile of one station; ``items`` are the ways by item id, with the item's own fields where a pair."""
    made = []
    for item_id, given in items.items():
        ways, fields = given if isinstance(given, tuple) else (given, {})
        made.append(item(item_id, **{"weight": 1, **fields}, cost=ways))
    return profile(station=[{"id": "all", "name": "All", "item": made}], job=list(jobs), currency="GBP", **more)


def failing(*ids, money=None, **more):
    """A record in which these items failed."""
    return record(*(found(i, "fail") for i in ids), money=money or Money(), **more)


def paid(**fields):
    return Money.model_validate({"currency": "GBP", "labour_rate": "10", **fields})


def sold(key, price, **fields):
    return Comparable.model_validate({"id": key, "kind": "sold", "price": str(price), "title": key, **fields})


def amounts(*texts):
    return tuple(D(str(text)) for text in texts)
