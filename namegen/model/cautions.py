"""What a sheet says before anybody wires: the usual cautions, one sentence each.

Sources: "university" is what safety pages of a university's student projects and of a
university robotics lab say, as read; "practice" is common practice, no source.
"""

from __future__ import annotations

CAUTIONS = (
    # university
    "Unplug the battery before you plug or unplug anything, and leave it unplugged while you wire.",
    # practice
    "The fuse sits near the battery, and its rating is not above what the thinnest wire behind it"
    " carries.",
    # university
    "Put power on the motors for the first time from a supply with a current limit; switch off at"
    " once if the limit is reached.",
    # university
    "Before power: everybody knows, a second person is there, a switch that cuts motor power is in"
    " reach, eyes are protected.",
    # practice
    "Before anything turns: the robot stands so that nothing it drives touches anything and it"
    " cannot tip; first moves at low power.",
    # university
    "Keep fingers, hair and cords away from whatever moves.",
    # university
    "Never use a lithium battery that is swollen, punctured or hot; never charge one unattended.",
    "What the makers' instructions, the rules of the place and the supervising adult say comes"
    " before this sheet.",
)
