"""How long a judgement takes; the limit counts only where INSPECTOR_BENCH=1."""

import json
import os
import sys
from time import perf_counter

import pytest

from inspector.judgement.judge import judge
from inspector.record.finding import Concluded, Finding
from inspector.record.words import Conclusion, Evidence, Mark
from tests.judgement.make import CARBURETTOR, item, profile, record

LIMIT_MS = 10
ITEMS = 62


def machine():
    stations = [
        {"id": f"s{n}", "name": f"Station {n}", "item": [
            item(f"i{n}-{k}", variant=CARBURETTOR, heading="paint", safety="brake" if k == 0 else None)
            for k in range(8 if n < 7 else ITEMS - 56)
        ]}
        for n in range(8)
    ]  # fmt: skip
    return profile(station=stations)


def walked(made):
    marks, forms = list(Mark), [v["id"] for v in CARBURETTOR]
    findings = tuple(
        Finding(
            item=i, by=by, mark=marks[n % 3], fitted=forms[n % len(forms)], note="Worn at the lug. Seen by lamp.",
            conclusions=(Concluded(what=Conclusion.WRONG_YEAR),), evidence=(Evidence.SHAPE,),
        )
        for n, i in enumerate(made.item_by_id) for by in ("inspector", "ben")
    )  # fmt: skip
    return record(*findings, points=True)


def fastest_ms(work, times=15):
    def once():
        start = perf_counter()
        work()
        return 1000 * (perf_counter() - start)

    return min(once() for _ in range(times))


@pytest.mark.bench
def test_a_full_record_is_judged_within_ten_milliseconds(capsys):
    made = machine()
    given = walked(made)
    assert len(made.item_by_id) == ITEMS
    plain = given.model_dump(mode="json")
    floor = fastest_ms(lambda: json.loads(json.dumps(plain)))
    took = fastest_ms(lambda: judge(made, given))
    told = f"judge {took:.2f} ms, {ITEMS} items, {len(given.findings)} findings; JSON there and back {floor:.2f} ms"
    with capsys.disabled():
        sys.stdout.write(f"\n{told}\n")
    assert len(judge(made, given).states) == ITEMS
    if os.environ.get("INSPECTOR_BENCH") == "1":
        assert took <= LIMIT_MS
