"""Numbers of parts sold as spares, beside the numbers that a machine was built with."""

from inspector.judgement.papers import compare_papers
from inspector.judgement.relations import Stand, relations
from inspector.profile.read import read_profile
from inspector.record.claim import Claim, Paper, Quoted
from inspector.resource import sample_profiles
from tests.judgement.dated import decoded, read
from tests.judgement.make import record


def test_the_number_of_a_replacement_part_is_an_answer_and_no_disagreement():
    """practice.md's honest replacement crankcases: common practice, no source."""
    heron = read_profile(sample_profiles() / "brackwater-heron").profile
    readings = (read("frame", "6H 15842"), read("engine", "SR 1234"))
    given = record(readings=readings, claim=Claim(model_year=1953))
    standing = next(s for s in relations(heron, given, decoded(heron, given)) if s.places == ("frame", "engine"))
    assert (standing.stand, standing.raises) == (Stand.CANNOT, False)
    assert str(standing.sentence) == (
        "cannot compare: the engine number is that of a replacement part (“SR and four figures, crankcases sold as"
        " spares”)"
    )
    paper = Paper(id="p", name="Bill", quoted=(Quoted(number="SR 1234", place="engine"),))
    (same,) = compare_papers(heron, given.model_copy(update={"papers": (paper,)}), decoded(heron, given))
    assert same.stand is Stand.AGREE
