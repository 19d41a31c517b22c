"""What an author of a target needs to know, and the targets that there are."""

from __future__ import annotations

import re
import textwrap
from collections.abc import Iterator, Mapping

from namegen.model.workspaces import OptionValue
from namegen.targets.escaping import all_escapes, summary
from namegen.targets.target import Target

GUIDE = """\
A target is a folder with a target.yaml and Jinja2 templates. The folder's name is the target's.

target.yaml
  model        1, the version of the data below
  description  one line
  per          robot: one file for each robot; workspace: one file for all of them
  template     the template file, in the same folder; it may import and include others from there
  language     python, java, kotlin or cpp: whose identifiers the data bears; left out: none
  file         the usual file name, as a hint for `to:`
  escapes      the filters that the templates use, from the list below
  fields       given where each device is a field of the generated code: words that the template
               keeps for itself. A device whose field would be one of them, a reserved word of
               the language or another device's field is an error.
  options      name: {type: text | boolean | number | texts | by-kind, help: ..., default: ...,
               pattern: ..., identifies: type | other}
               What a build entry may set under `with:`. Without a default it must be given. A text
               with a pattern (a regular expression for the whole of it) is put out as it is; one
               without wants an escape. {robot}, {Robot} and {stem} (the output's file name without
               its ending) are replaced in texts. `texts` is a list of texts. `by-kind` has a text
               for each kind, and one under "*" for every other: options.types[device.kind].
               A text that `identifies` a type, or other things such as a package or a variable, may
               hold no word that the language reserves for them, and none of `fields`.

Text that a person typed cannot be put out as it is: a template that tries stops with an error.
Pipe it through an escape: {{ device.name | json_value }}. Below, * marks such text. It may be
compared, counted and tested for being empty without one. Undefined names are errors, and so are
true, false and none where text should be: {{ "yes" if device.optional else "no" }}. Templates run
in a sandbox, which stops one whose loops take more than a million turns. Two more filters:
`lines(width)` fills escaped text into a list of lines, `sentence` adds a full stop.

In every template
  options      the settings of the build entry
  robot        the robot, for a target that is per robot
  robots       all robots, for one that is per workspace

robot
  name*, title*, revision*
  type_name    the name as a type of the language
  manifest*    path of its manifest, relative to the workspace
  mark         the sheet mark
  selected*    the setup to select; empty without setups
  setups       all setups; where the manifest has none, a single one without a name
  controllers  in the order of the manifest
  kinds        the kinds of its devices, by first appearance
  devices      all devices, each as the selected setup wires it, or else as the manifest says
  undecided    devices of the selected setup without a port yet
  elsewhere    devices of the selected setup on a controller that the manifest does not list
  cautions*    what to heed before wiring, a sentence each; every sheet should say it

device
  name*, kind*, part*, does*, expect*, note*
  spelling*    what in the name is not a small letter: "capital T"
  constant, field, kind_type
               identifiers of the device and of its kind in the language; empty without one
  port*        all its ports, with commas between; empty while undecided
  ports        its ports one by one
  controller*, label*
               of its first port
  address      as 0x3A; empty without one
  address_number
               the same as a number, or none
  reversed, optional, undecided
  built_in     whether it is part of a board
  selected     whether it belongs to the selected setup
  formerly     its former names*, newest first
  aliases      those former names whose constant means this device and no other, newest first
  numbers      what follows from the figures of its part and from the battery

alias
  name*, constant

number
  name         in snake_case, with its unit at the end: counts_per_mm
  constant     the device's constant with the number's name behind it; empty without a language
  value, text  the number, and the same with a decimal point, as every language reads it
  says, formula
               what it is, and what it comes from, in namegen's own words

kind
  name*, type_name, devices
  renamed      whether one of its devices has aliases

controller
  name*, board*, address, address_number
  uplink*      the port that it is connected to
  groups       its ports by type, as the board lists them
  built_in     what is part of the board

group
  type*, ports

port
  controller*, type*, label*
  text*        all of it: bridge motor 1
  dead         whether it is broken
  devices      what the selected setup plugs in here (only in a controller's groups)
  uplink_of    names* of the controllers connected here

built_in
  label*, kind*, devices

setup
  name*, selected, devices
  differences  how to change over from the selected setup

difference
  device, before*, after*
  action       unplug, plug in, move or change part
"""


WIDTH = 100


def describe(targets: Mapping[str, Target]) -> str:
    """Return the guide, every escape and every target in a line or two, for people."""
    parts = [GUIDE, "Escapes"]
    parts += [f"  {name:<16} {summary(name)}" for name in all_escapes()]
    parts += ["", "Targets"]
    for target in targets.values():
        parts += _filled(target.description, f"  {target.name:<18} ", " " * 21)
    parts += ["", "`namegen explain target NAME` tells the options of one and how to ask for it."]
    return "\n".join(parts)


def describe_one(target: Target) -> str:
    """Return what one target makes, what to write to have it, and its options, for people."""
    files = "one file for each robot" if target.per == "robot" else "one file for all robots"
    made = f"Makes {files}, usually {target.file}."
    parts = [target.name, *_filled(target.description), *_filled(made), ""]
    parts += ["In namegen.yaml, under `build`:", *_entry(target)]
    if target.options:
        parts += ["", "Options, under `with`"]
    for option in target.options.values():
        default = "must be given" if option.default is None else f"default {_shown(option.default)}"
        parts.append(f"  {option.name} ({option.type}, {default})")
        parts += _filled(option.help, " " * 6)
    return "\n".join(parts)


def _entry(target: Target) -> Iterator[str]:
    """Yield the lines of a build entry, with dots where a value must be given."""
    alone = target.per == "robot" and "obot}" not in target.file
    yield f"  - target: {target.name}"
    yield f'    to: "code/{"{robot}/" if alone else ""}{target.file}"'
    needed = [option.name for option in target.options.values() if option.default is None]
    if needed:
        yield "    with:"
        yield from (f"      {name}: ..." for name in needed)


def _shown(default: OptionValue) -> str:
    """Return a default as it would be written in YAML."""
    import json  # flow style is JSON's

    return json.dumps(default, ensure_ascii=False)


def _filled(text: str, indent: str = "  ", later: str | None = None) -> list[str]:
    """Return a text as lines, broken at blanks outside the samples that stand in backticks."""
    kept = re.sub(r"`[^`]*`", lambda sample: sample[0].replace(" ", "\0"), text)
    lines = textwrap.wrap(
        kept,
        WIDTH,
        initial_indent=indent,
        subsequent_indent=indent if later is None else later,
        break_long_words=False,
        break_on_hyphens=False,
    )
    return [line.replace("\0", " ") for line in lines]
