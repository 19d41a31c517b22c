"""Finding kinds between the robots of a workspace, one file each."""
