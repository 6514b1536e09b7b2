"""First store: rigs, entries about them, whole texts by content, versions of files, uploads.

Rows are added and never changed; triggers keep that, whoever writes.
"""

import sqlalchemy as sa
from alembic import op

revision = "0001"
down_revision: str | None = None

ADDED_TO = ("rigs", "texts", "entries", "versions", "uploads")
NEVER = "what was entered is never changed"


def upgrade() -> None:
    """Make the tables and the triggers that refuse every change of a row."""
    moment = sa.DateTime(timezone=True)
    op.create_table(
        "rigs",
        sa.Column("slug", sa.String(64), primary_key=True),
        sa.Column("name", sa.String(80), nullable=False),
        sa.Column("axle", sa.String(5), nullable=False),
        sa.Column("began", moment, nullable=False),
    )
    op.create_table(
        "texts",
        sa.Column("digest", sa.String(64), primary_key=True),
        sa.Column("text", sa.Text, nullable=False),
        sa.Column("kept", moment, nullable=False),
    )
    op.create_table(
        "entries",
        sa.Column("number", sa.Integer, primary_key=True, autoincrement=True),
        sa.Column("rig", sa.String(64), sa.ForeignKey("rigs.slug"), nullable=False),
        sa.Column("kind", sa.String(16), nullable=False),
        sa.Column("path", sa.String(80), nullable=False),
        sa.Column("text", sa.Text, nullable=False),
        sa.Column("device", sa.String(64), nullable=False),
        sa.Column("key", sa.String(80)),
        sa.Column("at", moment, nullable=False),
        sa.UniqueConstraint("rig", "key", name="entries_key_once"),
        sqlite_autoincrement=True,
    )
    op.create_index("entries_by_rig", "entries", ["rig", "number"])
    op.create_table(
        "versions",
        sa.Column("entry", sa.Integer, sa.ForeignKey("entries.number"), primary_key=True),
        sa.Column("digest", sa.String(64), sa.ForeignKey("texts.digest"), nullable=False),
    )
    op.create_table(
        "uploads",
        sa.Column("digest", sa.String(64), primary_key=True),
        sa.Column("size", sa.Integer, nullable=False),
        sa.Column("name", sa.String(120), nullable=False),
        sa.Column("at", moment, nullable=False),
    )
    if op.get_context().dialect.name == "postgresql":
        op.execute(
            "CREATE FUNCTION refuse_change() RETURNS trigger LANGUAGE plpgsql AS "
            f"$$ BEGIN RAISE EXCEPTION '{NEVER}'; END $$"
        )
    for table in ADDED_TO:
        for act in ("UPDATE", "DELETE"):
            op.execute(_refusal(table, act))


def _refusal(table: str, act: str) -> str:
    head = f"CREATE TRIGGER {table}_no_{act.lower()} BEFORE {act} ON {table}"
    if op.get_context().dialect.name == "postgresql":
        return f"{head} FOR EACH ROW EXECUTE FUNCTION refuse_change()"
    return f"{head} BEGIN SELECT RAISE(ABORT, '{NEVER}'); END"
