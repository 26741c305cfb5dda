"""How common each form of an item was among the machines of a year, as built."""

from __future__ import annotations

from itertools import groupby, pairwise
from typing import TYPE_CHECKING

from inspector.judgement.form_years import form_span
from inspector.profile.words import Origin

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from inspector.profile.items import Item, Variant
    from inspector.profile.model import Profile

# From one of the profile's years, counted from 0, to before another: the share there.
Piece = tuple[int, int, float]


def pieces_of(profile: Profile, item: Item, form: Variant) -> tuple[Piece, ...]:
    """The form's share, 0 to 1, among the forms as built, over each stretch of years with the same forms.

    Forms with a share of their own keep it; the others part what is left evenly. Shares of one year that do not
    add up to 1 are taken in proportion. In years that no piece holds the form was not in use.
    """
    key = ("pieces", item.id, form.id)
    if key not in profile.worked_out:
        profile.worked_out[key] = _pieces(profile, item, form)
    found: tuple[Piece, ...] = profile.worked_out[key]
    return found


def _pieces(profile: Profile, item: Item, form: Variant) -> tuple[Piece, ...]:
    forms = [(form_span(profile, item, v), v.share) for v in item.variants if _built(v)]
    own = form_span(profile, item, form) if _built(form) else range(0)
    if not own:
        return ()
    first, last = profile.model_years
    low, high = max(first, min(own)), min(last, max(own)) + 1
    edges = {low, high}
    for held, _ in forms:
        edges.update([edge for edge in _edges(held) if low < edge < high])
    cuts = sorted(edges)
    return tuple(
        [
            (start - first, end - first, _share(form.share, [share for held, share in forms if start in held]))
            for start, end in pairwise(cuts)
            if start in own
        ]
    )


def _built(variant: Variant) -> bool:
    return variant.years is not None and (variant.origin is Origin.FACTORY or variant.origin is Origin.OPTION)


def _edges(held: range | frozenset[int]) -> Iterable[int]:
    return (held.start, held.stop) if isinstance(held, range) else held | {year + 1 for year in held}


def _share(own: float | None, of_all: Sequence[float | None]) -> float:
    """The part of one form, by its own share or None, among those of all the forms in use, itself one of them."""
    if len(of_all) == 1:
        return 1.0
    given = [share for share in of_all if share is not None]
    unshared = len(of_all) - len(given)
    left = max(0.0, 1 - sum(given)) / unshared if unshared else 0.0
    total = sum(given) + left * unshared
    # Where shares are given as none at all, or leave nothing over, every form counts the same.
    return (left if own is None else own) / total if total > 0 else 1 / len(of_all)


def mean_pieces(profile: Profile, item: Item, forms: Sequence[Variant]) -> tuple[Piece, ...]:
    """The mean of the shares of several forms, where people differ on which is fitted."""
    columns = zip(*(shares_by_year(profile, item, form) for form in forms), strict=True)
    found: list[Piece] = []
    at = 0
    for share, same in groupby(sum(column) / len(forms) for column in columns):
        end = at + len(list(same))
        found.append((at, end, share))
        at = end
    return tuple(found)


def shares_by_year(profile: Profile, item: Item, form: Variant) -> tuple[float, ...]:
    """The form's share in each of the profile's years, 0 where it was not in use."""
    shares = [0.0] * len(profile.years)
    for low, high, share in pieces_of(profile, item, form):
        shares[low:high] = [share] * (high - low)
    return tuple(shares)
