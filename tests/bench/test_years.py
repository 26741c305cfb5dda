"""How long the judgement of a large record and the years of a large profile take; limits where INSPECTOR_BENCH=1."""

import os
import sys

import pytest

from inspector.judgement.judge import judge
from inspector.judgement.years import years
from inspector.profile.words import Assembly
from inspector.record.finding import Finding
from inspector.record.words import Evidence, Mark
from tests.bench.test_judgement import fastest_ms
from tests.judgement.dated import NUMBERED, decoded, form, machine, read
from tests.judgement.make import item, record

JUDGE_MS, YEARS_MS = 20, 50
RECORD_ITEMS, PROFILE_ITEMS = 200, 1000


def large(count):
    """Items of four forms over eleven years, spread over every assembly."""
    assemblies = list(Assembly)

    def forms(n):
        copy = {"id": "copy", "name": "copy", "origin": "pattern part"}
        later = form(1954, 1957, id="late", name="late form", at="p. 4", share=0.4)
        option = form(1953, 1955 + n % 4, id="option", name="option", origin="factory option", share=0.2)
        return [form(1950 + n % 3, 1953), later, option, copy]

    made = [item(f"i{n}", assembly=assemblies[n % len(assemblies)], variant=forms(n)) for n in range(count)]
    return machine(*made, place=[NUMBERED])


def walked(made):
    marks, named = list(Mark), ("built", "late", "option", "copy")
    findings = tuple(
        Finding(item=i, by="inspector", mark=marks[n % 3], fitted=named[n % 7 % 4], evidence=(Evidence.SHAPE,))
        for n, i in enumerate(made.item_by_id)
    )
    return record(*findings, readings=(read("frame", "15[47]?0"),))


def measured(told, took, limit, capsys):
    with capsys.disabled():
        sys.stdout.write(f"\n{told} {took:.2f} ms (at most {limit})\n")
    if os.environ.get("INSPECTOR_BENCH") == "1":
        assert took <= limit


@pytest.mark.bench
def test_a_record_of_two_hundred_items_is_judged_within_twenty_milliseconds(capsys):
    made = large(RECORD_ITEMS)
    given = walked(made)
    assert len(judge(made, given).years.parts) == RECORD_ITEMS + 1
    measured("judge of 200 items", fastest_ms(lambda: judge(made, given)), JUDGE_MS, capsys)


@pytest.mark.bench
def test_the_years_of_a_profile_of_a_thousand_items_are_found_within_fifty_milliseconds(capsys):
    made = large(PROFILE_ITEMS)
    given = walked(made)
    numbers = decoded(made, given)
    assert years(made, given, numbers).together.firm > PROFILE_ITEMS // 2
    measured("years of 1,000 items", fastest_ms(lambda: years(made, given, numbers)), YEARS_MS, capsys)
