"""What a sheet says before it is drawn."""

import pytest

from inspector.judgement.judge import judge
from inspector.profile.model import Profile
from inspector.record.claim import Claim, Inquiry
from inspector.record.finding import Finding
from inspector.record.money import Adjustment, Comparable, Money, Remedy, Signature
from inspector.record.words import Adjusts, Mark, PriceKind, Seen
from inspector.sheet import blocks as b
from inspector.sheet.compose import seller_sheet
from inspector.sheet.text import as_text
from tests.sheet import made

NEVER = ("authentic", "genuine", "original numbers", "certified", "not stolen", "safe to ride", "market value")


def block(sheet, kind):
    return next(one for one in sheet.blocks if isinstance(one, kind))


def test_every_finding_stands_in_the_text_with_its_note_evidence_and_next_step():
    text = as_text(made.sheet())
    for finding in made.record().findings:
        assert finding.note in text
        assert finding.next_step in text
        assert finding.reply in text
    assert "wrong year, sure: shape, book with page (Parts list, p 62)." in text
    assert "modified, likely: measurement." in text


def test_a_conclusion_without_evidence_says_so():
    entries = {e.name: e for e in block(made.sheet(), b.FindingsBlock).entries}
    rows = {row.label: row.said for row in entries["Carburettor"].voices[0].rows}
    assert str(rows["Why"]) == "right type but year not shown, sure: no evidence recorded."


def test_fails_come_before_doubts_and_carry_the_numbers_of_the_outline():
    sheet = made.sheet()
    entries = block(sheet, b.FindingsBlock).entries
    assert [(e.number, e.sign) for e in entries] == [(1, "fail"), (2, "fail"), (3, "doubt"), (4, "doubt"), (5, "doubt")]
    numbers = {spot.name: spot.number for spot in block(sheet, b.SeenBlock).spots}
    assert {e.name: e.number for e in entries} == {name: n for name, n in numbers.items() if n}


def test_every_item_stands_somewhere_by_name():
    text = as_text(made.sheet())
    assert [item.name for item in made.profile().items() if item.name not in text] == []


@pytest.mark.parametrize(
    ("word", "name"),
    [("Cannot be seen", "Rear hub, inside (behind the chain guard)"), ("Not seen", "Oil drain plug (under the tray)"),
     ("Not checked", "Tail lamp"), ("Not fitted to this version", "Side stand")],
)  # fmt: skip
def test_what_was_not_examined_is_listed_under_its_cause(word, name):
    groups = {group.word: group.names for group in block(made.sheet(), b.NotExaminedBlock).groups}
    assert name in groups[word]


def test_an_empty_record_lists_every_item_as_not_checked_and_shows_no_score():
    record = made.record(findings=(), photographs=(), readings=())
    sheet = made.sheet(record)
    (first, *_) = block(sheet, b.NotExaminedBlock).groups
    assert len(first.names) == 20
    assert block(sheet, b.ScoreBlock).whole.value is None
    assert block(sheet, b.ScoreBlock).whole.says == "nothing seen yet"
    assert "No doubt and no fail is recorded." in as_text(sheet)


def test_the_counts_add_up_to_all_items():
    counts = block(made.sheet(), b.SeenBlock).counts
    assert sum(c.number for c in counts) == len(made.ITEMS)


def test_two_who_differ_are_both_kept():
    other = Finding(item="headlamp", by="seller", mark=Mark.FAIL, note="I never liked that lamp.")
    sheet = made.sheet(made.record(findings=(*made.FINDINGS, other)))
    entry = next(e for e in block(sheet, b.FindingsBlock).entries if e.name == "Headlamp")
    said = [str(row.said) for voice in entry.voices for row in voice.rows]
    assert "Two who looked differ, and both are kept." in said
    assert [voice.said for voice in entry.voices] == [
        "", "A. Teasel, 17 May 2025, 10:42: pass", "R. Quill: fail",
    ]  # fmt: skip


def test_an_item_that_the_profile_does_not_list_is_kept():
    stray = Finding(item="sidecar", by="inspector", mark=Mark.DOUBT, note="Lug on the frame.")
    text = as_text(made.sheet(made.record(findings=(stray,))))
    assert "sidecar (not listed in this profile)" in text
    assert "Lug on the frame." in text


def test_what_was_examined_without_a_mark_is_told_in_full():
    seen = Finding(item="headlamp", by="inspector", seen=Seen.EXAMINED, note="Glass replaced.")
    entries = block(made.sheet(made.record(findings=(seen,))), b.FindingsBlock).entries
    assert [(e.sign, e.word, e.name) for e in entries] == [("examined", "examined, no mark yet", "Headlamp")]


def test_the_four_kinds_of_year_stand_apart_and_are_not_filled_in():
    rows = {row.label: str(row.said) for row in block(made.sheet(), b.ClaimBlock).rows}
    assert rows["Model year"] == "1953"
    assert rows["Year on the title"] == "1954"
    assert rows["Build date"] == rows["First registration"] == "not stated"
    assert (rows["As advertised"], rows["As titled"]) == ("1953 Heron, all as made", "Heron 600, 1954")


def test_what_nobody_asked_says_not_asked():
    text = as_text(made.sheet(made.record(inquiries=())))
    assert "Theft: not asked" in text
    assert "Lien: not asked" in text
    assert "interest: not asked" in text


def test_a_reply_is_given_in_its_own_words():
    asked = Inquiry(id="a", about="Theft register", body="Marsh Riders", sent="6H 1", date="2025-05-16", reply="None.")
    text = as_text(made.sheet(made.record(inquiries=(asked,))))
    assert "Asked of Marsh Riders; sent: 6H 1; 16 May 2025; reply: None." in text
    assert "Theft: not asked" not in text


def test_a_number_is_told_figure_by_figure_and_nothing_is_filled_in():
    frame, engine, gearbox = block(made.sheet(), b.NumbersBlock).rows
    assert "figure 5 is 8 or 3" in frame.how
    assert [c.clarity for c in frame.cells] == ["clear"] * 5 + ["probable"] + ["clear"] * 2
    assert engine.typed == "6HE 1?0842"
    assert "figure 5 is unreadable" in engine.how
    assert (gearbox.typed, gearbox.says) == ("", "not read")


def test_no_money_reaches_the_sheet():
    purse = {
        "claim": Claim(model="Heron", asking_price="777001 crowns"),
        "comparables": (Comparable(id="c", kind=PriceKind.ASKED, price=777002, currency="EUR", place="777003"),),
        "adjustments": (Adjustment(id="777004", comparable="c", what=Adjusts.TIME, amount=777005, reason="777006"),),
        "money": Money(budget=777007, target=777001, purpose="777002"),
        "remedies": (Remedy(item="fuel-tank", cost="777006"),),
    }
    sheet = made.sheet(made.record(**purse))
    assert "777" not in as_text(sheet)
    assert "777" not in repr(sheet)


def test_a_photograph_that_is_not_in_the_store_says_so():
    text = as_text(made.sheet(pictures={}))
    assert "photograph 2 is not in the store" in text


@pytest.mark.parametrize("data", [b"", b"\xff\xd8\xff", b"not a picture", b"\x89PNG\r\n\x1a\n" + bytes(90)])
def test_a_picture_that_cannot_be_read_says_so(data):
    text = as_text(made.sheet(pictures={f"p{n}": data for n in range(1, 6)}))
    assert "photograph 2 is not shown: it cannot be read" in text


def test_every_photograph_stands_on_the_sheet_once():
    sheet = made.sheet(made.record(photos=40))
    shown = [p.number for e in block(sheet, b.FindingsBlock).entries for p in e.pictures]
    shown += [p.number for p in block(sheet, b.PicturesBlock).pictures]
    assert sorted(shown) == list(range(1, 41))


def test_signatures_say_whether_and_when():
    strokes = (((0.0, 0.0), (5.0, 9.0)), ())
    signed = Signature(id="1", person="inspector", at="2025-05-17T11:20:00+01:00", strokes=strokes)
    refused = Signature(id="2", person="seller", refused=True, statement="I do not agree with 2.")
    one, other = block(made.sheet(made.record(signatures=(signed, refused))), b.SignatureBlock).signatures
    assert (one.who, one.state) == ("A. Teasel, inspector", "17 May 2025, 11:20")
    assert one.strokes == (((0.0, 0.0), (5.0, 9.0)),)
    assert (other.state, other.statement) == ("refused to sign", "I do not agree with 2.")
    assert [s.state for s in block(made.sheet(), b.SignatureBlock).signatures] == ["not yet signed"] * 2


def test_the_sheet_itself_says_no_never_word():
    plain = " ".join(as_text(made.sheet()).casefold().split())
    assert [word for word in NEVER if word in plain] == []


def test_coverage_stands_before_the_score_and_is_never_rounded_up():
    score = block(made.sheet(), b.ScoreBlock)
    assert score.coverage == "85 % of what bears weight; 15 % left"
    assert score.whole.low <= score.whole.value <= score.whole.high
    assert {row.name for _, rows in score.tables for row in rows} >= {"Left side", "Right side", "engine", "frame"}


def test_the_grade_and_every_source_stand_at_what_is_expected():
    (entry, *_) = block(made.sheet(), b.FindingsBlock).entries
    (form,) = entry.expected
    assert [(c.grade, c.words) for c in form.sources] == [
        (3, "factory list, Parts list 1953, page 62"),
        (1, "press, Road test of 1953, page 62"),
    ]


def test_a_caution_of_the_profile_is_not_said_twice():
    own = ("Never abrade the pad of this machine.",)
    sheet = made.sheet(by=made.profile(cautions=own))
    assert [str(row.said) for row in block(sheet, b.CautionsBlock).rows if "abrade" in str(row.said)] == list(own)
    assert "An engine is not started indoors." in as_text(sheet)


def test_what_would_steer_a_screen_is_shown_by_its_number():
    text = as_text(made.sheet(made.record(statements=[{"id": "s", "text": "red \x1b[31m and \u202e back"}])))
    assert "“red [U+001B][31m and [U+202E] back”" in text


def test_a_fact_without_source_says_so():
    plain = made.profile().model_dump(by_alias=True)
    for station in plain["station"]:
        for item in station["item"]:
            for variant in item["variant"]:
                variant["sources"] = ()
    profile, record = Profile.model_validate(plain), made.record()
    text = as_text(seller_sheet(profile, record, judge(profile, record), {}, None, made.MADE_AT, 1))
    assert "no source (no grade)" in text
