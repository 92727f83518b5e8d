"""Wood as far as its movement goes: species, moisture, and the room that panels and tops need."""

from dryfit.wood.floating import (
    button_stand_off,
    dry_engagement,
    least_engagement,
    panel_gap,
    panel_width,
)
from dryfit.wood.movement import USUAL_SWING, Moisture, equilibrium_moisture, movement
from dryfit.wood.moving import Moving, moving, percent_words
from dryfit.wood.species import Species, all_species, assumption, species, wood_names

__all__ = [
    "USUAL_SWING",
    "Moisture",
    "Moving",
    "Species",
    "all_species",
    "assumption",
    "button_stand_off",
    "dry_engagement",
    "equilibrium_moisture",
    "least_engagement",
    "movement",
    "moving",
    "panel_gap",
    "panel_width",
    "percent_words",
    "species",
    "wood_names",
]
