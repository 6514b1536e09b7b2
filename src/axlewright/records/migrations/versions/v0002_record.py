"""Second store: parts and where they were fitted; looks, readings, trips, hits, jobs and the rest.

Rows are added and never changed. One change alone is let through: the end of a fitment is entered
once, by the entry that ends it.
"""

import sqlalchemy as sa
from alembic import op

revision = "0002"
down_revision = "0001"

NEVER = "what was entered is never changed"
DETAILS: dict[str, str] = {  # column, its type, a question mark where it may be empty
    "looks": "occasion:t look:t state:t part:t side:t found:t until:d? until_distance:f? "
    "until_trips:i?",
    "readings": "quantity:t value:f kind:t unit:t given:t standard:f freedom:f? side:t "
    "instrument:t repeats:t load_state:t bearing:t conditions:t corrected:f procedure:t "
    "component:t",
    "trips": "name:t distance:f duration:f? grounds:t load_state:t pressure:f? water:f? "
    "temperature:f?",
    "hits": "what:t side:t speed:f?",
    "jobs": "task:t part:t side:t interval:t torque:t settles:i component:t",
    "own_limits": "limit:t low:f? high:f? kind:t given:t printed:t",
    "chapters": "title:t since:d? until:d? shortest:f longest:f tyre:t load_state:t grounds:t "
    "broke:t",
    "noticed": "about:t answers:t",
    "fitted": "component:t place:t",
    "taken_off": "component:t reason:t",
    "remarks": "about:t",
    "withdrawn": "reason:t",
}
TYPES = {"t": sa.Text, "f": sa.Double, "i": sa.Integer, "d": sa.Date}
ADDED_TO = ("happenings", "components", "photos", *DETAILS)


def upgrade() -> None:
    """Make the tables, the indices that keep a part in one place, and the triggers."""
    moment = sa.DateTime(timezone=True)
    op.create_table(
        "happenings",
        sa.Column("number", sa.Integer, primary_key=True, autoincrement=True),
        sa.Column("rig", sa.String(64), sa.ForeignKey("rigs.slug"), nullable=False),
        sa.Column("kind", sa.String(16), nullable=False),
        sa.Column("day", sa.Date, nullable=False),
        sa.Column("odometer", sa.Double),
        sa.Column("who", sa.Text, nullable=False),
        sa.Column("note", sa.Text, nullable=False),
        sa.Column("device", sa.String(64), nullable=False),
        sa.Column("key", sa.String(80)),
        sa.Column("replaces", sa.Integer, sa.ForeignKey("happenings.number")),
        sa.Column("at", moment, nullable=False),
        sa.UniqueConstraint("rig", "key", name="happenings_key_once"),
        sa.UniqueConstraint("replaces", name="happenings_replaced_once"),
        sqlite_autoincrement=True,
    )
    op.create_index("happenings_by_rig", "happenings", ["rig", "day", "number"])
    op.create_table(
        "components",
        sa.Column("key", sa.String(64), primary_key=True),
        sa.Column("kind", sa.String(32), nullable=False),
        sa.Column("name", sa.Text, nullable=False),
        sa.Column("mark", sa.Text, nullable=False),
        sa.Column("at", moment, nullable=False),
    )
    _fitments()
    op.create_table(
        "photos",
        sa.Column("happening", sa.Integer, sa.ForeignKey("happenings.number"), primary_key=True),
        sa.Column("digest", sa.String(64), sa.ForeignKey("uploads.digest"), primary_key=True),
    )
    for name, columns in DETAILS.items():
        op.create_table(
            name,
            sa.Column(
                "happening", sa.Integer, sa.ForeignKey("happenings.number"), primary_key=True
            ),
            *(_column(each) for each in columns.split()),
        )
    for table in ADDED_TO:
        for act in ("UPDATE", "DELETE"):
            op.execute(_refusal(table, act))


def _column(told: str) -> "sa.Column[object]":
    name, _, kind = told.partition(":")
    return sa.Column(name, TYPES[kind[0]], nullable=kind.endswith("?"))


def _fitments() -> None:
    op.create_table(
        "fitments",
        sa.Column("begun", sa.Integer, sa.ForeignKey("happenings.number"), primary_key=True),
        sa.Column("component", sa.String(64), sa.ForeignKey("components.key"), nullable=False),
        sa.Column("rig", sa.String(64), sa.ForeignKey("rigs.slug"), nullable=False),
        sa.Column("place", sa.String(80), nullable=False),
        sa.Column("ended", sa.Integer, sa.ForeignKey("happenings.number")),
    )
    still = sa.text("ended IS NULL")
    for name, columns in (
        ("fitments_one_place", ["component"]),
        ("fitments_one_part", ["rig", "place"]),
    ):
        op.create_index(
            name, "fitments", columns, unique=True, sqlite_where=still, postgresql_where=still
        )
    held = ("begun", "component", "rig", "place")
    same = " AND ".join(f"NEW.{each} = OLD.{each}" for each in held)
    once = f"NOT (OLD.ended IS NULL AND NEW.ended IS NOT NULL AND {same})"
    op.execute(_refusal("fitments", "UPDATE", once))
    op.execute(_refusal("fitments", "DELETE"))


def _refusal(table: str, act: str, when: str = "") -> str:
    head = f"CREATE TRIGGER {table}_no_{act.lower()} BEFORE {act} ON {table}"
    each = f"FOR EACH ROW WHEN ({when})" if when else "FOR EACH ROW"
    if op.get_context().dialect.name == "postgresql":
        return f"{head} {each} EXECUTE FUNCTION refuse_change()"
    return f"{head} {each} BEGIN SELECT RAISE(ABORT, '{NEVER}'); END"
