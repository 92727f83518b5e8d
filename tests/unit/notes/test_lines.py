from dryfit.diagnostics import Source
from dryfit.notes.reading.lines import SenseLine, parted, respelled, sense_lines, split


def lines_of(text: str) -> list[SenseLine]:
    return list(sense_lines(Source("a", text)))


def test_remarks_blank_lines_and_trailing_blanks_are_left_out() -> None:
    lines = lines_of("piece A  # the first\n\n# only a remark\n   \n4 legs   ")
    assert [(line.line, line.text) for line in lines] == [(1, "piece A"), (5, "4 legs")]


def test_signs_are_folded_one_to_one_so_that_columns_stay() -> None:
    typed = "a\u00a0= 5\u2032 6\u2033 \u2212 1\u20442\u201d \u2013 \u2018x\u2019\t2 \u2715 3"
    assert lines_of(typed)[0].text == "a = 5' 6\" - 1/2\" - 'x' 2 × 3"
    assert len(lines_of(typed)[0].text) == len(typed)


def test_a_line_goes_on_after_comma_sign_or_open_bracket() -> None:
    for end in (",", " +", " *", "×", " x", "2x", "(", ",   # remark"):
        assert len(lines_of(f"4 legs{end}\n  upright")) == 1, end
    for end in ("", " -", "box", ".", " box"):
        assert len(lines_of(f"4 legs{end}\nupright")) == 2, end


def test_remarks_may_stand_between_but_an_empty_line_ends_it() -> None:
    assert [line.text for line in lines_of("4 legs,\n# why\nupright")] == ["4 legs, upright"]
    assert [line.text for line in lines_of("4 legs,\n\nupright")] == ["4 legs", "upright"]


def test_free_text_never_goes_on() -> None:
    assert len(lines_of("note sand, oil,\n4 legs")) == 2
    assert len(lines_of("piece A,\n4 legs")) == 2


def test_places_on_a_continued_line_are_of_the_line_they_stand_on() -> None:
    line = lines_of("4 legs,\n  upright, # so\n 40 x 40")[0]
    assert line.text == "4 legs,   upright,  40 x 40"
    at = line.text.index("upright")
    span = line.span(at, at + 7)
    assert (span.line, span.column, span.end_column) == (2, 3, 10)
    assert span.text() == "upright"
    assert line.offsets(span) == (at, at + 7)
    over_the_end = line.span(at, len(line.text))
    assert over_the_end.text() == "upright,"


def test_a_line_is_respelled_and_split_at_its_source_lines() -> None:
    line = lines_of("4 legs,\nuprihgt,\n40 x 40")[0]
    assert respelled(line, "upright,  # yes", 2).text == "4 legs, upright, 40 x 40"
    assert [part.text for part in parted(line)] == ["4 legs", "uprihgt", "40 x 40"]
    before, after = split(line, 2)
    assert (before.text, after.text, after.line) == ("4 legs, uprihgt", "40 x 40", 3)
