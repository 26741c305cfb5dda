"""The commands, run as a person types them: what they print, and the code they end with."""

import json

import pypdf
import pytest

from inspector.cli import AMISS, MISUSE, WELL, main
from inspector.demo import DEMO_ID, put_demo
from inspector.resource import sample_profiles
from inspector.storage.library import Library

HERON = str(sample_profiles() / "brackwater-heron")


@pytest.fixture
def data(tmp_path, monkeypatch):
    folder = tmp_path / "data"
    monkeypatch.setenv("INSPECTOR_DATA", str(folder))
    return folder


@pytest.fixture
def with_demo(data):
    with Library.open(data, lambda: "2026-05-16T12:00:00+01:00") as library:
        put_demo(library)
    return data


def told(capsys):
    """What was printed, and what was said of trouble."""
    out, err = capsys.readouterr()
    assert "Traceback" not in out + err
    return out, err


def test_an_empty_library_says_so(data, capsys):
    assert main(["list"]) == WELL
    assert told(capsys)[0] == "No machine here yet.\n"


def test_the_list_names_each_machine(with_demo, capsys):
    assert main(["list", "--json"]) == WELL
    (machine,) = json.loads(told(capsys)[0])
    assert (machine["id"], machine["model_year"], machine["invented"]) == (DEMO_ID, 1953, True)


def test_judging_says_safety_first_and_coverage_before_the_score(with_demo, capsys):
    assert main(["judge", DEMO_ID]) == WELL
    lines = told(capsys)[0].splitlines()
    seen = next(n for n, line in enumerate(lines) if line.startswith("Seen:"))
    score = next(n for n, line in enumerate(lines) if line.startswith("Correct,"))
    caution = next(n for n, line in enumerate(lines) if line.startswith("No ride before"))
    assert any("Front rim" in line for line in lines[:caution])
    assert caution < seen < score


def test_the_judgement_in_json_is_the_same_every_time(with_demo, capsys):
    assert main(["judge", DEMO_ID, "--json"]) == WELL
    first = json.loads(told(capsys)[0])
    assert main(["judge", DEMO_ID, "--json"]) == WELL
    assert json.loads(told(capsys)[0]) == first
    assert first["score"]["low"] <= first["score"]["value"] <= first["score"]["high"]


def test_judging_says_that_a_number_stands_in_another_record(with_demo, tmp_path, capsys):
    with Library.open(with_demo, lambda: "2026-05-16T12:00:00+01:00") as library:
        loaded = library.load(DEMO_ID)
        library.create(loaded.record.model_copy(update={"id": "OTHER123"}), loaded.profile_folder)
    assert main(["judge", DEMO_ID]) == WELL
    notices = [line for line in told(capsys)[0].splitlines() if "OTHER123" in line]
    assert "The same number, 6HE 15842, stands in another record: Brackwater Heron 600 (OTHER123)." in notices
    assert "A number in another record may be the same, 6H 15[83]42: Brackwater Heron 600 (OTHER123)." in notices
    assert not any("11 53" in line for line in notices)
    assert main(["judge", "OTHER123", "--json"]) == WELL
    same = json.loads(told(capsys)[0])["same_numbers"]
    assert {(one["record_id"], one["place"], one["sure"]) for one in same} >= {(DEMO_ID, "engine", True)}


def test_a_record_that_is_not_there_is_one_line(data, capsys):
    assert main(["judge", "NOWHERE1"]) == AMISS
    _, err = told(capsys)
    assert "NOWHERE1" in err
    assert len(err.splitlines()) == 1


def test_a_record_file_is_judged_by_the_profile_that_ships(with_demo, tmp_path, capsys):
    with Library.open(with_demo, lambda: "2026-05-16T12:00:00+01:00") as library:
        record = library.load(DEMO_ID).record
    path = tmp_path / "record.json"
    path.write_text(record.model_dump_json(), "utf-8")
    assert main(["check", str(path)]) == WELL
    assert main(["judge", str(path)]) == WELL
    assert "Seen:" in told(capsys)[0]


@pytest.mark.parametrize("text", ["", "{}", '{"format": 2}', "[1]", '{"id": "A"'])
def test_a_file_that_is_no_record_is_one_line(tmp_path, capsys, text):
    path = tmp_path / "record.json"
    path.write_text(text, "utf-8")
    assert main(["judge", str(path)]) == AMISS
    assert len(told(capsys)[1].splitlines()) == 1


def test_the_sellers_copy_is_written_without_money(with_demo, tmp_path, capsys):
    to = tmp_path / "new" / "sheet.pdf"
    assert main(["sheet", DEMO_ID, "--copy", "seller", "--to", str(to)]) == WELL
    assert told(capsys)[0].strip() == str(to)
    with Library.open(with_demo, lambda: "2026-05-16T12:00:00+01:00") as library:
        price = library.load(DEMO_ID).record.claim.asking_price
    text = "\n".join(page.extract_text() for page in pypdf.PdfReader(to).pages)
    assert "Brackwater Heron 600" in text
    assert price
    assert price not in text


@pytest.mark.parametrize(("form", "pages"), [([], 4), (["--form", "short"], 4), (["--form", "full"], 40)])
def test_a_walk_sheet_is_short_unless_the_full_form_is_asked_for(data, tmp_path, capsys, form, pages):
    to = tmp_path / "blank.pdf"
    assert main(["sheet", "brackwater-heron", "--copy", "blank", "--year", "1953", *form, "--to", str(to)]) == WELL
    count = len(pypdf.PdfReader(to).pages)
    assert pages // 2 < count <= pages
    told(capsys)


@pytest.mark.parametrize("paper", [("A4", 842), ("Letter", 792)])
def test_a_blank_walk_sheet_needs_no_machine(data, tmp_path, capsys, paper):
    to = tmp_path / "blank.pdf"
    words = ["sheet", "brackwater-heron", "--copy", "blank", "--year", "1953", "--paper", paper[0], "--to", str(to)]
    assert main(words) == WELL
    assert round(pypdf.PdfReader(to).pages[0].mediabox.height) == paper[1]
    told(capsys)


def test_a_sheet_that_cannot_be_written_is_one_line(data, tmp_path, capsys):
    (tmp_path / "file").write_text("in the way")
    to = tmp_path / "file" / "sheet.pdf"
    assert main(["sheet", "brackwater-heron", "--copy", "blank", "--to", str(to)]) == AMISS
    assert len(told(capsys)[1].splitlines()) == 1


def test_a_good_profile_is_as_it_should_be(capsys):
    assert main(["check", HERON]) == WELL
    assert "As it should be." in told(capsys)[0]


def test_a_broken_profile_names_line_fault_and_mend(tmp_path, capsys):
    (tmp_path / "profile.toml").write_text('format = 1\nid = "Bad Id"\ncolour = "red"\n', "utf-8")
    assert main(["check", str(tmp_path), HERON]) == AMISS
    out, _ = told(capsys)
    assert "profile.toml line 2" in out
    assert "profile.toml line 3" in out
    assert "Mend:" in out


def test_a_new_profile_is_one_that_can_be_used(tmp_path, capsys):
    assert main(["profile", "new", "--to", str(tmp_path / "my-model"), "--title", "My model"]) == WELL
    assert main(["check", str(tmp_path / "my-model")]) == WELL
    assert main(["profile", "new", "--to", str(tmp_path / "my-model")]) == AMISS
    assert len(told(capsys)[1].splitlines()) == 1


def test_the_schema_is_written(tmp_path, capsys):
    assert main(["profile", "schema", "--to", str(tmp_path / "schema.json")]) == WELL
    assert "properties" in json.loads((tmp_path / "schema.json").read_text("utf-8"))
    assert main(["profile", "schema"]) == MISUSE
    told(capsys)


def test_the_demo_writes_its_sheets_and_leaves_the_library_alone(data, tmp_path, capsys):
    assert main(["demo", "--to", str(tmp_path / "out"), "--json"]) == WELL
    written = json.loads(told(capsys)[0])["written"]
    assert [len(pypdf.PdfReader(path).pages) > 3 for path in written] == [True] * 3
    assert not data.exists()


@pytest.mark.parametrize("words", [["judge"], ["sheet", "X"], ["nonsense"], ["check"]])
def test_wrong_use_is_told_as_such(words, capsys):
    with pytest.raises(SystemExit) as ended:
        main(words)
    assert ended.value.code == MISUSE
    told(capsys)


def test_the_commands_read_beside_a_window_that_has_the_library_open(with_demo, tmp_path, capsys):
    with Library.open(with_demo, lambda: "2026-05-16T12:00:00+01:00"):
        assert main(["list"]) == WELL
        assert main(["judge", DEMO_ID]) == WELL
        assert main(["sheet", DEMO_ID, "--copy", "seller", "--to", str(tmp_path / "sheet.pdf")]) == WELL
    assert DEMO_ID in told(capsys)[0]


def test_a_number_is_read_with_every_possibility_its_sources_and_how_many_remain(capsys):
    assert main(["read", "brackwater-heron", "frame", "6H 15[83]42"]) == WELL
    lines = told(capsys)[0].splitlines()
    assert "if figure 5 is 8: 1953 model, built October 1952 (factory list)" in lines[0]
    assert any("Illustrated spares list, 1952 models (factory list). Only if figure 5 is 3." in line for line in lines)
    assert "Numbers that remain: 2" in lines


def test_sources_that_disagree_about_a_number_are_both_told(capsys):
    assert main(["read", HERON, "Frame number", "6h-19800"]) == WELL
    assert "The sources disagree: 1954 by" in told(capsys)[0]


def test_a_number_of_no_rule_says_which_it_came_nearest_and_ends_with_one(capsys):
    assert main(["read", HERON, "frame", "6H26481"]) == AMISS
    assert "1 above the last known number, 6H26480" in told(capsys)[0]


def test_a_number_can_be_read_for_one_year_and_in_json(capsys):
    assert main(["read", HERON, "frame", "6H19800", "--year", "1955", "--json"]) == WELL
    answer = json.loads(told(capsys)[0])
    assert (answer["years"], answer["serials"], answer["outcome"]) == ([1955], 1, "read by rule")
    assert [hit["sources"] for hit in answer["hits"]] == [["register"]]


@pytest.mark.parametrize(
    ("asked", "said"),
    [
        ([HERON, "seat", "6H1"], "Its places are: frame (Frame number), engine"),
        (["nowhere", "frame", "6H1"], "neither a folder nor a profile that ships (brackwater-heron,"),
        ([HERON, "frame", "6H[15"], 'a bracket like [19] must hold at least one figure and be closed with "]"'),
        ([HERON, "frame", "6H["], "6H[ cannot be read"),
    ],
)
def test_reading_asked_wrongly_is_one_sentence_that_says_how_to_mend_it(capsys, asked, said):
    assert main(["read", *asked]) == MISUSE
    out, err = told(capsys)
    assert out == ""
    assert said in err
    assert len(err.splitlines()) == 1


@pytest.mark.parametrize("name", ["wants.pdf", "wants.csv"])
def test_the_wants_list_is_written_as_paper_or_table(with_demo, tmp_path, capsys, name):
    assert main(["sheet", DEMO_ID, "--copy", "wants", "--to", str(tmp_path / name)]) == WELL
    assert told(capsys)[0] == f"{tmp_path / name}\n"
    if name.endswith(".csv"):
        text = (tmp_path / name).read_text("utf-8-sig")
    else:
        text = " ".join("".join(page.extract_text() for page in pypdf.PdfReader(tmp_path / name).pages).split())
    assert "Find a two-bolt tank of 1951 to 1954" in text


def test_a_wants_list_can_be_made_of_a_record_file(with_demo, tmp_path, capsys):
    with Library.open(with_demo, lambda: "2026-05-16T12:00:00+01:00") as library:
        kept = library.load(DEMO_ID).record
    (tmp_path / "record.json").write_text(kept.model_dump_json(), "utf-8")
    to = tmp_path / "wants.csv"
    assert main(["sheet", str(tmp_path / "record.json"), "--copy", "wants", "--to", str(to)]) == WELL
    assert len(to.read_text("utf-8-sig").splitlines()) > 3


@pytest.mark.parametrize(("copy", "said"), [
    ("owner", "Owner’s file, private"),
    ("dating", "no authority is bound by it"),
    ("pictures", "Photographs for an insurer"),
])  # fmt: skip
def test_each_copy_of_a_machine_is_written(with_demo, tmp_path, capsys, copy, said):
    to = tmp_path / f"{copy}.pdf"
    assert main(["sheet", DEMO_ID, "--copy", copy, "--to", str(to)]) == WELL
    told(capsys)
    assert said in " ".join(pypdf.PdfReader(to).pages[0].extract_text().split())
