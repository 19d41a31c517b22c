"""Finding kinds of generated files, as a build that writes nothing tells them."""
