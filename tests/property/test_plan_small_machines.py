"""In a shop whose machines take little, none is asked for what it cannot take (TRADE A6).

The limits of `tests/shops/small_machines.toml` are set so that each of them is passed by something
in the examples and test pieces; what is beyond them is planned at the bench.
"""

import pytest
from tests.pieces.reading import FILES, text_of, without_boards
from tests.unit.operations.worked import listed
from tests.unit.rehearsal.damaged_times import SHOPS, Built, built

from dryfit import workshop
from dryfit.diagnostics import Source
from dryfit.plan.operation import Operation
from dryfit.rehearsal.fault import Reason
from dryfit.rehearsal.rehearse import rehearse

SHOP = "small_machines"
MACHINES = ("mitre saw", "band saw", "jointer", "planer", "table saw", "router table", "mortiser")


def in_shop(name: str) -> Built:
    """A piece planned in that shop."""
    return built(name, SHOP)


def operations_in_shop(name: str) -> tuple[Operation, ...]:
    """What is to be done to a piece in that shop, in no order."""
    source = Source("notes.dryfit", without_boards(text_of(name)))
    found = workshop.check(source, SHOPS[SHOP], {})
    assert found.model is not None
    return listed(found.model, found.shop)[0].operations


@pytest.mark.parametrize("name", sorted(FILES))
def test_no_machine_is_asked_for_what_it_cannot_take(name: str) -> None:
    found = in_shop(name)
    faults = rehearse(found.plan, found.goal, found.shop)
    assert [each.message for each in faults if each.reason is Reason.MACHINE] == []


def test_what_is_done_by_hand_names_the_limit_and_the_machines_do_the_rest() -> None:
    used: set[str] = set()
    told: set[str] = set()
    for name in sorted(FILES):
        for operation in operations_in_shop(name):
            used.add(operation.station)
            words = "".join(str(word) for detail in operation.details for word in detail)
            told |= {each for each in MACHINES if f"By hand: the {each} takes a" in words}
    assert set(MACHINES) <= used
    assert told >= {"mitre saw", "band saw", "jointer", "planer", "table saw"}
