"""One contradiction between answers."""

from dataclasses import dataclass

from axlewright.errors import Fault


@dataclass(frozen=True, slots=True)
class Clash:
    """One contradiction: the field to look at again, what is wrong, what to do."""

    path: str
    problem: str
    remedy: str

    def as_fault(
        self, file: str, line: int | None = None, given: str = "", beside: tuple[str, ...] = ()
    ) -> Fault:
        """Give the contradiction as a fault of a file; ``beside`` are the other answers in it."""
        return Fault(
            file=file,
            line=line,
            field=self.path,
            given=given,
            problem=self.problem,
            accepted=f"{self.remedy[:1].upper()}{self.remedy[1:]}",
            beside=beside,
        )
