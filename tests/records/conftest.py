"""A place for a store on each engine: a file, and a database of its own on a real server."""

import os
import secrets

import pytest
import sqlalchemy as sa
from tools.postgres import ADDRESS, programs, server


@pytest.fixture(scope="session")
def postgres():
    """Address of a server: the one that is given, else one of our own for the while."""
    if given := os.environ.get(ADDRESS):
        yield given
        return
    if programs() is None:
        pytest.skip("no PostgreSQL on this machine")
    with server() as address:
        yield address


@pytest.fixture(params=["sqlite", "postgresql"])
def target(request, tmp_path):
    """Where to open a store, on each engine."""
    if request.param == "sqlite":
        yield tmp_path / "store.sqlite"
        return
    address = request.getfixturevalue("postgres")
    name = f"t{secrets.token_hex(6)}"
    plain = address.replace("postgresql://", "postgresql+pg8000://")
    engine = sa.create_engine(plain, isolation_level="AUTOCOMMIT")
    with engine.connect() as connection:
        connection.exec_driver_sql(f"CREATE DATABASE {name}")
    yield f"{address.rpartition('/')[0]}/{name}"
    with engine.connect() as connection:
        connection.exec_driver_sql(f"DROP DATABASE {name} WITH (FORCE)")
    engine.dispose()
