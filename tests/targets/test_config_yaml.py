"""The YAML configuration, read back by PyYAML, says what the JSON one says."""

from __future__ import annotations

import json

import jsonschema
import yaml

from targets.boats import HERON, robot
from targets.test_config_json import SCHEMA, setups_of


def test_every_value_comes_back(make, hostile_robots):
    validator = jsonschema.Draft202012Validator(SCHEMA)
    for manifest in (HERON, robot(), *hostile_robots):
        read = yaml.safe_load(make("config-yaml", manifest))
        validator.validate(read)
        assert read["robot"] == manifest.robot
        assert read["title"] == manifest.title
        assert read["selected"] == manifest.selected
        assert read["setups"] == setups_of(manifest)


def test_it_says_what_the_json_file_says(make, hostile_robots):
    for manifest in (HERON, robot(), *hostile_robots):
        read = yaml.safe_load(make("config-yaml", manifest))
        assert read == json.loads(make("config-json", manifest))


def test_just_the_selected_setup_is_marked(make):
    read = yaml.safe_load(make("config-yaml"))
    marks = {setup["setup"]: setup["selected"] for setup in read["setups"]}
    assert marks == {"harvest": True, "tank-test": False}
