"""Parts inside patterns on paper: named as the notes name them, their ids left alone."""

from dryfit.booklet.drawing.shapes import wrapped
from dryfit.booklet.html import as_spoken


def test_a_part_inside_an_instance_is_named_as_in_the_notes() -> None:
    html = '<li data-operation="low tray &gt; side / rip">Rip the low tray &gt; side</li>'
    spoken = '<li data-operation="low tray &gt; side / rip">Rip the low tray\u2019s side</li>'
    assert as_spoken(html) == spoken


def test_other_signs_stay() -> None:
    assert as_spoken("<p>3 &gt;2, a &lt;b&gt; c</p>") == "<p>3 &gt;2, a &lt;b&gt; c</p>"


def test_a_name_in_a_drawing_is_not_torn_asunder_where_a_line_ends() -> None:
    lines = wrapped("From above: low tray > side; low tray > bottom", 20)
    assert " ".join(lines) == "From above: low tray\u2019s side; low tray\u2019s bottom"
