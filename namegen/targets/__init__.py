"""Targets: folders of data (``target.yaml`` and Jinja2 templates) that turn manifests into files.

Jinja2 and PyYAML load only when a target is read or rendered.
"""

from namegen.targets.guide import describe
from namegen.targets.rendering import render
from namegen.targets.scene import Scene
from namegen.targets.schemes import naming_schemes
from namegen.targets.shelf import load
from namegen.targets.target import Option, Target

__all__ = ["Option", "Scene", "Target", "describe", "load", "naming_schemes", "render"]
