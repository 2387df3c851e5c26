"""What sheets ask alike of plying; each sheet has an input of its own."""

from yarnsheets.page.inputs import Input


def which_percentage(part: str) -> str:
    """Say which two things a percentage of take-up can mean, to a reader who types one.

    >>> which_percentage("strand").split(".")[1]
    ' 10% more strand than yarn is 1'
    """
    return (
        f"A percentage can mean two things, so type the factor. 10% more {part} than yarn is 1.1; a"
        f" {part} that comes out 10% shorter is 1 ÷ 0.9, which is 1.111."
    )


def take_up(value: float, *, title: str = "Take-up in plying") -> Input:
    """Ask for the take-up of singles, as a factor and never as a percentage."""
    return Input(
        title,
        "number",
        value,
        low=0.98,
        high=1.15,
        step=0.005,
        measure="Length of single that goes into the same length of plied yarn, from a sample: 1.05"
        " means 5% more single than yarn.",
        percent=which_percentage("single"),
    )
