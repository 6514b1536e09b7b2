"""A store of any version opens: from nothing, from the first, and not from one that is newer."""

import io
import sqlite3
from pathlib import Path

import pytest
import sqlalchemy as sa
from alembic.config import Config
from alembic.migration import MigrationContext
from alembic.operations import Operations
from alembic.script import ScriptDirectory

from axlewright.errors import AxlewrightError
from axlewright.records import STORE_VERSION, Book, New, Store, opening
from axlewright.records.migrations.versions import v0001_first, v0002_record
from axlewright.records.schema import META

FIRST = Path(__file__).with_name("store-1.sql")
NEXT = f"{STORE_VERSION + 1:04d}"
LATER = '''"""A later version, for the test alone."""

from alembic import op
import sqlalchemy as sa

revision, down_revision = "{revision}", "{before}"


def upgrade():
    op.add_column("rigs", sa.Column("colour", sa.String(20)))
    {more}
'''


@pytest.fixture
def first(tmp_path):
    """A store as version 1 wrote it."""
    file = tmp_path / "store.sqlite"
    plain = sqlite3.connect(file)
    plain.executescript(FIRST.read_text("utf-8"))
    plain.close()
    return file


@pytest.fixture
def later(tmp_path, monkeypatch):
    """Migrations with one more version behind the newest."""

    def made(more=""):
        folder = tmp_path / "migrations"
        (folder / "versions").mkdir(parents=True)
        home = Path(opening.__file__).parent / "migrations"
        for name in ("env.py", *(f"versions/{each.name}" for each in home.glob("versions/v*.py"))):
            (folder / name).write_text((home / name).read_text("utf-8"), "utf-8")
        text = LATER.format(more=more, revision=NEXT, before=opening.NEWEST)
        (folder / "versions" / f"v{NEXT}_next.py").write_text(text, "utf-8")
        monkeypatch.setattr(opening, "MIGRATIONS", str(folder))
        return NEXT

    return made


def columns(engine):
    """Tables and columns of a database, and what each column can hold."""
    meta = sa.MetaData()
    meta.reflect(engine)
    return {
        (table.name, column.name): (
            str(column.type.compile(engine.dialect)),
            column.nullable,
            column.primary_key,
        )
        for table in meta.sorted_tables
        for column in table.columns
        if table.name != "alembic_version"
    }


def test_a_new_store_is_what_this_version_writes(tmp_path):
    store = Store.open(tmp_path / "new.sqlite")
    wanted = sa.create_engine("sqlite://")
    META.create_all(wanted)
    assert columns(store._engine) == columns(wanted)
    assert opening.version_of(store._engine) == opening.NEWEST == f"{STORE_VERSION:04d}"
    store.close()


def test_the_last_migration_bears_the_stores_number():
    config = Config()
    config.set_main_option("script_location", opening.MIGRATIONS)
    assert ScriptDirectory.from_config(config).get_heads() == [opening.NEWEST]


def test_a_store_of_version_1_opens_with_all_it_held(first):
    store = Store.open(first)
    assert [row.slug for row in store.rigs()] == ["heron-front"]
    said = store.entries_after("heron-front")
    assert [(each.number, each.kind, each.text) for each in said[:2]] == [
        (1, "began", "Heron"),
        (2, "answer", "1510 kg"),
    ]
    assert store.text(said[2].text).startswith("axlewright_change = 1")
    assert store.add("heron-front", [New(kind="name", text="Wren")]) == 4
    store.close()


def test_a_store_of_version_2_opens_with_all_it_held(tmp_path):
    file = tmp_path / "store.sqlite"
    plain = sqlite3.connect(file)
    plain.executescript(FIRST.with_name("store-2.sql").read_text("utf-8"))
    plain.close()
    store = Store.open(file)
    book = Book(store)
    told = book.history("heron-front", replaced=True)
    assert [type(each.body).__name__ for each in told] == [
        *("Reading", "Reading", "Fitted", "LookTaken")
    ]
    assert told[0].replaced == told[1].number
    assert told[0].body.repeats == (-0.0087,)
    assert len(told[0].photos) == 1
    [fitment] = book.fitments(rig="heron-front")
    assert (fitment.component, fitment.place, fitment.ended) == ("hub-1", "left hub", 0)
    store.close()


def test_an_older_store_is_copied_whole_and_then_brought_up(first, later):
    engine = opening.engine_for(first)
    opening.brought_up(engine, first, later())
    assert opening.version_of(engine) == NEXT
    assert ("rigs", "colour") in columns(engine)
    engine.dispose()
    copy = Store.open(first.with_name(f"store.sqlite.before-{NEXT}"))
    assert len(copy.entries_after("heron-front")) == 3
    copy.close()


def test_a_migration_that_fails_half_way_leaves_the_store_as_it_was(first, later):
    engine = opening.engine_for(first)
    with pytest.raises(AxlewrightError):
        opening.brought_up(engine, first, later('op.execute("INSERT INTO nowhere VALUES (1)")'))
    assert opening.version_of(engine) == "0001"
    assert ("rigs", "colour") not in columns(engine)
    engine.dispose()
    Store.open(first).close()


def test_a_newer_store_is_refused_and_left_alone(first):
    plain = sqlite3.connect(first)
    plain.execute("UPDATE alembic_version SET version_num = '0099'")
    plain.commit()
    plain.close()
    with pytest.raises(AxlewrightError, match="version 99, newer than this program"):
        Store.open(first)
    assert list(first.parent.glob("*before*")) == []


def test_the_second_version_is_written_for_postgresql_as_well():
    """PostgreSQL documentation, "Partial Indexes" and the WHEN of "CREATE TRIGGER"."""
    out = io.StringIO()
    context = MigrationContext.configure(
        dialect_name="postgresql", opts={"as_sql": True, "output_buffer": out}
    )
    with Operations.context(context):
        v0002_record.upgrade()
    sql = out.getvalue()
    assert sql.count("WHERE ended IS NULL") == 2
    assert sql.count("EXECUTE FUNCTION refuse_change()") == 2 * len(v0002_record.ADDED_TO) + 2
    assert "WHEN (NOT (OLD.ended IS NULL AND NEW.ended IS NOT NULL" in sql


def test_the_first_version_is_written_for_postgresql_as_well():
    """PostgreSQL documentation, "CREATE TRIGGER" and "CREATE FUNCTION": what each looks like."""
    out = io.StringIO()
    context = MigrationContext.configure(
        dialect_name="postgresql", opts={"as_sql": True, "output_buffer": out}
    )
    with Operations.context(context):
        v0001_first.upgrade()
    sql = out.getvalue()
    assert "number SERIAL NOT NULL" in sql
    assert "TIMESTAMP WITH TIME ZONE" in sql
    assert sql.count("EXECUTE FUNCTION refuse_change()") == 2 * len(v0001_first.ADDED_TO)
    assert sql.index("CREATE FUNCTION refuse_change()") < sql.index("CREATE TRIGGER")
