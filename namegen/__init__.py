"""namegen: one manifest of device names per robot, and everything that must agree with it."""
