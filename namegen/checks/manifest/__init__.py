"""Finding kinds that are judged in manifests and in the text of YAML files."""
