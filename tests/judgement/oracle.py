"""Numbers read the slow way: every completion of a reading written out, each laid on every rule letter by letter."""

import itertools
import string
from collections import defaultdict

from inspector.profile.words import Gives, SegmentKind
from inspector.record.reading import numbered

DATES = {
    Gives.MODEL_YEAR: ("model_year", range(1880, 2101)),
    Gives.BUILD_YEAR: ("build_year", range(1879, 2102)),
    Gives.MONTH: ("month", range(1, 13)),
    Gives.WEEK: ("week", range(1, 54)),
    Gives.DAY: ("day", range(1, 32)),
}
ALPHABET = string.digits + string.ascii_uppercase


def clean(text, separators):
    return "".join(sign.upper() for sign in text if sign not in separators and not sign.isspace())


def completions(figures, separators, alphabet=ALPHABET):
    """Every number that the reading can be: the choice of each doubtful figure by its number, and the text."""
    counted = []
    for number, figure in numbered(tuple(figures)):
        can = [s for s in dict.fromkeys(clean("".join(figure.could_be), separators))] or list(alphabet)
        if figure.could_be and not clean("".join(figure.could_be), separators):
            continue
        counted.append((number, can, len(figure.could_be) > 0 and len(can) > 1))
    for signs in itertools.product(*(can for _, can, _ in counted)):
        doubtful = {n: s for (n, _, doubt), s in zip(counted, signs, strict=True) if doubt}
        yield doubtful, "".join(signs)


def splits(rule, segments, text):
    """Every way in which the segments spell the text, as (segment, piece) pairs."""
    if not segments:
        if not text:
            yield ()
        return
    head, *rest = segments
    for piece in pieces(rule, head, text):
        for more in splits(rule, rest, text[len(piece) :]):
            yield ((head, piece), *more)
    if head.optional:
        yield from splits(rule, rest, text)


def pieces(rule, segment, text):
    if segment.kind is SegmentKind.LITERAL:
        options = {clean(segment.text, rule.separators)}
    elif segment.kind is SegmentKind.TABLE:
        options = {clean(code.code, rule.separators) for code in segment.codes} - set(rule.never_used.upper())
    else:
        low, high = segment.widths()
        options = {text[:width] for width in range(low, high + 1) if len(text) >= width}
        options = {piece for piece in options if piece.isdigit() and piece.isascii()}
        if segment.gives not in DATES or segment.id == rule.serial:
            options = {piece for piece in options if len(piece) == low or piece[0] != "0"}
        else:
            options = {piece for piece in options if meanings(rule, segment, piece)}
    return [piece for piece in options if piece and text.startswith(piece)]


def meanings(rule, segment, piece):
    """What the piece says of a date, one dictionary for each possibility."""
    if segment.kind is SegmentKind.TABLE:
        rows = [c for c in segment.codes if clean(c.code, rule.separators) == piece]
        return [{"model_year": c.model_year, "build_year": c.build_year, "month": c.month} for c in rows]
    if segment.kind is SegmentKind.LITERAL or segment.gives not in DATES or segment.id == rule.serial:
        return [{}]
    name, known = DATES[segment.gives]
    values = {int(piece) + plus for plus in segment.plus or (0,)} & set(known)
    spare = {Gives.MODEL_YEAR: 0, Gives.BUILD_YEAR: 1}.get(segment.gives)
    if spare is not None:
        first, last = rule.years.within(1880, 2100)
        values = {value for value in values if first - spare <= value <= last + spare}
    return [{name: value} for value in values]


def spells(texts, wanted):
    """True when the first of the texts, whole, one after the other, are what is wanted."""
    return any("".join(texts[:n]) == wanted for n in range(1, len(texts) + 1))


def beside(split, at):
    """The lettered pieces before the serial, nearest first and each to be read on, and those behind it."""
    lettered = [(n, piece) for n, (segment, piece) in enumerate(split) if segment.kind is not SegmentKind.DIGITS]
    return [p for n, p in lettered if n < at][::-1], [p for n, p in lettered if n > at]


def letters_fit(split, at, row, rows):
    before, behind = beside(split, at)
    mirrored = [p[::-1] for p in before]
    for texts, mine, others, flip in (
        (mirrored, row.prefix, {r.prefix for r in rows}, -1),
        (behind, row.suffix, {r.suffix for r in rows}, 1),
    ):
        if mine and not spells(texts, mine[::flip]):
            return False
        if not mine and any(other and spells(texts, other[::flip]) for other in others):
            return False
    return True


def holds(rule, row, serial):
    segment = next(s for s in rule.segments if s.id == rule.serial)
    low, high = segment.widths()
    if row.last is not None and row.last < row.first:
        figures = high if low == high else len(str(row.first))
        return row.first <= serial < 10**figures or serial <= row.last
    last = row.last
    if last is None:
        mine = set(row.sources or rule.sources)
        alike = [r for r in rule.ranges if (r.prefix, r.suffix) == (row.prefix, row.suffix) and r.first > row.first]
        starts = [r.first for r in alike if not mine or mine & set(r.sources or rule.sources)]
        last = min(starts) - 1 if starts else 10**high - 1
    return row.first <= serial <= last


def years_of(profile, row, split, rule):
    """The model years that row and codes allow together; None where neither says one, empty where they contradict."""
    years = None
    if row is not None and row.model_year is not None:
        years = {row.model_year}
    elif row is not None and row.years is not None:
        first, last = row.years.within(*profile.model_years)
        years = set(range(first, last + 1))
    for segment, piece in split:
        said = {m.get("model_year") for m in meanings(rule, segment, piece)}
        if None not in said:
            years = said if years is None else years & said
    return years


def answers(profile, place, text_of):
    """Rows (rule, place in the rule or None, years) that a number follows; text_of gives it without separators."""
    found = set()
    for rule in place.rules:
        by_id = {segment.id: segment for segment in rule.segments}
        for order in rule.sequences():
            for split in splits(rule, [by_id[name] for name in order], text_of(rule)):
                found |= rows_of(profile, rule, split)
    return found


def rows_of(profile, rule, split):
    at = next((n for n, (segment, _) in enumerate(split) if segment.id == rule.serial), None)
    if not rule.ranges:
        rows = [(None, None)]
    elif at is None:
        return set()
    else:
        serial = int(split[at][1])
        rows = [
            (n, row)
            for n, row in enumerate(rule.ranges)
            if holds(rule, row, serial) and letters_fit(split, at, row, rule.ranges)
        ]
    found = set()
    for n, row in rows:
        years = years_of(profile, row, split, rule)
        if years is None or years:
            found.add((rule.id, n, frozenset(years or ())))
    return found


def solved(profile, place, figures, alphabet=ALPHABET):
    """By choice of the doubtful figures: the rows with their years; and how many numbers follow a rule at all."""
    separators = place.rules[0].separators
    assert all(rule.separators == separators for rule in place.rules)
    rows, numbers = defaultdict(set), 0
    for doubtful, text in completions(figures, separators, alphabet):
        got = answers(profile, place, lambda _rule, text=text: text)
        numbers += bool(got)
        rows[tuple(sorted(doubtful.items()))] |= got
    return rows, numbers


def same(profile, place, figures, decoded, alphabet=ALPHABET):
    """Asserts that the decode is what the slow way finds: rows, conditions, years and count."""
    rows, numbers = solved(profile, place, figures, alphabet)
    for doubtful, got in rows.items():
        chosen = dict(doubtful)
        hits = [h for h in decoded.hits if all(chosen.get(n) == sign for n, sign in h.if_figures)]
        assert {(h.rule, h.row) for h in hits} == {(rule, row) for rule, row, _ in got}, (doubtful, decoded)
    told = {year for got in rows.values() for _, _, years in got for year in years}
    worked_out = {year for h in decoded.hits if h.worked_out for year in h.years}
    assert set(decoded.years) - worked_out == told - worked_out, decoded
    assert decoded.serials == numbers, decoded
