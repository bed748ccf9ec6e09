"""All published check values that the lab is held to, in the order of their ids."""

from lab.figures.published.aircraft_sums import AIRCRAFT
from lab.figures.published.airframes import AIRFRAMES
from lab.figures.published.centroids import CENTROIDS
from lab.figures.published.check_values import CheckValue
from lab.figures.published.doubts import DOUBTS
from lab.figures.published.held_bodies import HELD
from lab.figures.published.levers import LEVERS
from lab.figures.published.swings import SWINGS

REGISTER: tuple[CheckValue, ...] = tuple(
    sorted((*AIRCRAFT, *LEVERS, *HELD, *SWINGS, *CENTROIDS, *AIRFRAMES, *DOUBTS), key=lambda value: value.id)
)
