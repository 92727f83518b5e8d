"""A glued whole is worked when all of its glue is hard, that of its inner frames included."""

from tests.pieces.reading import model_of, text_of
from tests.unit.operations.worked import listed

from dryfit.placing.model import Model

HOUR = 600


def stool(inner: str, outer: str, *lines: str) -> Model:
    """The step stool, its side frames and its base glued with these glues."""
    text = text_of("step_stool")
    frames = next(line for line in text.splitlines() if line.startswith("glue up 2 side frames"))
    base = next(line for line in text.splitlines() if line.startswith("glue up base"))
    text = text.replace(frames, f"glue up 2 side frames: 2 legs, 1 short rail, with {inner}")
    text = text.replace(base, f"glue up base: side frames, long rails, with {outer}")
    return model_of("\n".join((text, *lines, "")))


def waits(model: Model, after: str) -> dict[str, int]:
    """The glue-ups that an operation waits for, with the hours."""
    return {
        rule.before.removesuffix(" / glue up"): rule.lag // HOUR
        for rule in listed(model)[0].rules
        if rule.after == after and rule.before.endswith(" / glue up")
    }


def test_a_slow_glue_in_an_inner_frame_is_hard_before_the_whole_is_sanded() -> None:
    # Shipped shop: epoxy is levelled after 24 h, white glue after 12; either is finished at 24.
    model = stool("epoxy", "slow white glue")
    frames = {"side frame 1": 24, "side frame 2": 24}
    assert waits(model, "base / sand 120") == {"base": 12, **frames}


def test_an_inner_frame_with_a_glue_no_slower_is_hard_before_the_whole_anyway() -> None:
    model = stool("white glue", "white glue")
    assert waits(model, "base / sand 120") == {"base": 12}
    assert set(waits(model, "base / coat 1")) == {"base"}
