"""One room: while a coat is wet no dust is made in it (TRADE D7, H68)."""

from dataclasses import replace
from pathlib import Path

from tests.unit.operations.worked import boot_bench, listed, operation, piece, shipped_shop

from dryfit.planning.dust import AIR, air_held, air_of, makes_dust, wet_for
from dryfit.planning.problem_of import problem_of
from dryfit.shop import read_shop

ROOM = shipped_shop()


def test_machines_and_sanding_make_dust_and_glue_does_not() -> None:
    work = boot_bench()
    assert makes_dust(operation(work, "post / thickness"))
    assert makes_dust(operation(work, "base / sand 120"))
    assert not makes_dust(operation(work, "base / glue up"))


def test_a_coat_holds_the_air_until_it_is_free_of_dust() -> None:
    """Oil varnish: 8 h (shop file, common practice)."""
    work = boot_bench()
    air = air_of(work.operations, ROOM)
    assert air is not None
    coat, sand = operation(work, "top / coat 1"), operation(work, "base / sand 120")
    assert [(hold.resource, hold.lag) for hold in air_held(coat, air, ROOM)] == [(AIR, 4800)]
    assert [hold.count for hold in air_held(sand, air, ROOM)] == [air.capacity]


def test_with_a_room_of_its_own_for_the_finish_nothing_waits() -> None:
    apart = replace(ROOM, one_room=False)
    assert wet_for(operation(boot_bench(), "top / coat 1"), apart) == 0
    names = {each.name for each in problem_of(listed(piece(), apart)[0], apart).resources}
    assert AIR not in names


def test_what_is_not_finished_needs_no_air() -> None:
    model = piece("boot_bench", ("finish oil varnish, 2 coats, 24 h apart", ""))
    assert air_of(listed(model)[0].operations, ROOM) is None


UNKNOWN = "finish bear grease, 2 coats, 24 h apart"


def test_an_unknown_finish_takes_up_dust_for_a_night_and_the_booklet_says_so() -> None:
    """8 h (TRADE D7), but no longer than until the next coat."""
    known = ("finish oil varnish, 2 coats, 24 h apart", UNKNOWN)
    model = piece("boot_bench", known)
    coat = operation(listed(model)[0], "top / coat 1")
    assert wet_for(coat, ROOM) == 8 * 600
    assert wet_for(replace(coat, after_tenths=300), ROOM) == 300
    (said,) = [each for each in model.assumptions if "bear grease" in each.text]
    assert said.belongs_to == "shop file"
    assert said.instead is not None


def test_the_line_offered_for_the_shop_file_is_read_and_changes_nothing(tmp_path: Path) -> None:
    model = piece("boot_bench", ("finish oil varnish, 2 coats, 24 h apart", UNKNOWN))
    (said,) = [each for each in model.assumptions if "bear grease" in each.text]
    line = (said.instead or "").removeprefix("in the shop file under [finish]: ")
    path = tmp_path / "shop.toml"
    path.write_text(f'format = "dryfit-shop/1"\nname = "Greased"\n[finish]\n{line}\n')
    shop, findings = read_shop(path, {})
    assert findings == ()
    assert shop is not None
    coat = operation(listed(model)[0], "top / coat 1")
    assert wet_for(coat, shop) == wet_for(coat, ROOM)
    assert operation(listed(model, shop)[0], "top / coat 1") == coat
