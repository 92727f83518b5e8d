from dryfit import workshop
from dryfit.diagnostics import Source

NOTES = """\
piece Stand
overall 300 wide, 300 deep, 200 high
4 legs, upright, 40 x 40, at corners
1 board, flat, 20 thick
legs under board: glued
glue up stand: board, legs
"""


def test_the_word_glued_alone_is_a_glued_butt_joint() -> None:
    checked = workshop.check(Source("stand", NOTES), None, {})
    assert checked.model is not None
    joints = [joint for joint in checked.model.joints if joint.kind == "glued butt"]
    assert [joint.guest for joint in joints] == [
        "front left leg",
        "front right leg",
        "back left leg",
        "back right leg",
    ]
    assert all(joint.glued and joint.area == 40 * 40 for joint in joints)
    assert set(checked.model.assemblies[0].joints) == {joint.id for joint in joints}
