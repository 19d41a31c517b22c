"""The robot's program. Look devices up by the names in robots/first.yaml."""


def start(robot):
    drive = robot.motor("driveMotor")
    bump = robot.switch("bumpFront")
    return drive, bump
