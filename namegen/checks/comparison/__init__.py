"""Finding kinds between two manifests, or a manifest and an as-found list, one file each."""
