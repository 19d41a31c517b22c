"""Words that tell one device from its counterpart: sides, directions, ranks, colours.

A name that differs from another by one of these is not a slip of it, however
near it is. Common practice in naming devices, no source.
"""

from __future__ import annotations

from functools import cache

_GROUPS = """
left right center centre middle mid
port starboard
bow stern
fore aft
front back rear
forward backward reverse
forwards backwards
fwd rev bwd
upper lower
top bottom
up down
above below
over under
high low
higher lower
open close shut
opened closed
opener closer
in out
inner outer
inside outside
input output
intake outtake outlet inlet
inward outward
internal external
inboard outboard
on off
start stop end
begin end finish
enable disable
push pull
raise lower
lift drop
extend retract
load unload
near far
first second third fourth fifth last
one two three four five six seven eight nine ten
primary secondary tertiary
main spare backup auxiliary aux
old new
big small
large small medium
long short
wide narrow
thick thin
fast slow
hot cold warm
wet dry
light heavy
light dark
min max
minimum maximum
horizontal vertical
vert horz
north south east west
roll pitch yaw
red green blue yellow white black orange purple grey gray brown pink
leader follower
local remote
source target
positive negative
plus minus
pos neg
clockwise anticlockwise counterclockwise
cw ccw
tx rx
send receive
read write
odd even
even uneven
alpha beta gamma delta
fl fr bl br rl rr
lf rf lb rb lr
lhs rhs
"""


@cache
def _groups_of() -> dict[str, frozenset[int]]:
    """Return word -> the groups that it belongs to."""
    groups: dict[str, set[int]] = {}
    for number, row in enumerate(_GROUPS.split("\n")):
        for word in row.split():
            groups.setdefault(word, set()).add(number)
    return {word: frozenset(numbers) for word, numbers in groups.items()}


def opposed(a: str, b: str) -> bool:
    """Whether two different words name counterparts; letter case does not count.

    >>> opposed("Left", "right"), opposed("bow", "Port"), opposed("up", "up")
    (True, False, False)
    """
    a, b = a.lower(), b.lower()
    groups = _groups_of()
    return a != b and not groups.get(a, frozenset()).isdisjoint(groups.get(b, frozenset()))


def telling(word: str) -> bool:
    """Whether a word is one that tells counterparts apart, whatever it stands against."""
    return word.lower() in _groups_of()
