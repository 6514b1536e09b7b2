-- A store as version 1 wrote it.
BEGIN TRANSACTION;
CREATE TABLE alembic_version (
	version_num VARCHAR(32) NOT NULL, 
	CONSTRAINT alembic_version_pkc PRIMARY KEY (version_num)
);
INSERT INTO "alembic_version" VALUES('0001');
CREATE TABLE entries (
	number INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT, 
	rig VARCHAR(64) NOT NULL, 
	kind VARCHAR(16) NOT NULL, 
	path VARCHAR(80) NOT NULL, 
	text TEXT NOT NULL, 
	device VARCHAR(64) NOT NULL, 
	"key" VARCHAR(80), 
	at DATETIME NOT NULL, 
	CONSTRAINT entries_key_once UNIQUE (rig, "key"), 
	FOREIGN KEY(rig) REFERENCES rigs (slug)
);
INSERT INTO "entries" VALUES(1,'heron-front','began','front','Heron','phone',NULL,'2026-11-25 13:26:39.690840');
INSERT INTO "entries" VALUES(2,'heron-front','answer','weight.axle','1510 kg','phone','phone-1','2026-11-25 13:26:39.698918');
INSERT INTO "entries" VALUES(3,'heron-front','change','heavier','32d22a6719f1d7b257e1667229f9d83b52815d77151c4d265e2559b963240c5d','laptop',NULL,'2026-11-25 13:26:39.718761');
CREATE TABLE rigs (
	slug VARCHAR(64) NOT NULL, 
	name VARCHAR(80) NOT NULL, 
	axle VARCHAR(5) NOT NULL, 
	began DATETIME NOT NULL, 
	PRIMARY KEY (slug)
);
INSERT INTO "rigs" VALUES('heron-front','Heron','front','2026-11-25 13:26:39.690840');
CREATE TABLE texts (
	digest VARCHAR(64) NOT NULL, 
	text TEXT NOT NULL, 
	kept DATETIME NOT NULL, 
	PRIMARY KEY (digest)
);
INSERT INTO "texts" VALUES('32d22a6719f1d7b257e1667229f9d83b52815d77151c4d265e2559b963240c5d','axlewright_change = 1
name = "heavier"

[[step]]
set = "weight.axle"
to = "1600 kg"
','2026-11-25 13:26:39.718761');
INSERT INTO "texts" VALUES('06b4d0b3c36bfda8090b8d1e91f9bd4aab39de0344e4d81c90af11fd0785163d','a rig file
','2026-11-25 13:26:39.718761');
CREATE TABLE uploads (
	digest VARCHAR(64) NOT NULL, 
	size INTEGER NOT NULL, 
	name VARCHAR(120) NOT NULL, 
	at DATETIME NOT NULL, 
	PRIMARY KEY (digest)
);
INSERT INTO "uploads" VALUES('55c64d0fcd6f9d5f7c828093857e3fdfda68478bb4e9bd24d481ef391c7804e8',5,'IMG_1.jpg','2026-11-25 13:26:39.743206');
CREATE TABLE versions (
	entry INTEGER NOT NULL, 
	digest VARCHAR(64) NOT NULL, 
	PRIMARY KEY (entry), 
	FOREIGN KEY(entry) REFERENCES entries (number), 
	FOREIGN KEY(digest) REFERENCES texts (digest)
);
INSERT INTO "versions" VALUES(3,'06b4d0b3c36bfda8090b8d1e91f9bd4aab39de0344e4d81c90af11fd0785163d');
CREATE INDEX entries_by_rig ON entries (rig, number);
CREATE TRIGGER rigs_no_update BEFORE UPDATE ON rigs BEGIN SELECT RAISE(ABORT, 'what was entered is never changed'); END;
CREATE TRIGGER rigs_no_delete BEFORE DELETE ON rigs BEGIN SELECT RAISE(ABORT, 'what was entered is never changed'); END;
CREATE TRIGGER texts_no_update BEFORE UPDATE ON texts BEGIN SELECT RAISE(ABORT, 'what was entered is never changed'); END;
CREATE TRIGGER texts_no_delete BEFORE DELETE ON texts BEGIN SELECT RAISE(ABORT, 'what was entered is never changed'); END;
CREATE TRIGGER entries_no_update BEFORE UPDATE ON entries BEGIN SELECT RAISE(ABORT, 'what was entered is never changed'); END;
CREATE TRIGGER entries_no_delete BEFORE DELETE ON entries BEGIN SELECT RAISE(ABORT, 'what was entered is never changed'); END;
CREATE TRIGGER versions_no_update BEFORE UPDATE ON versions BEGIN SELECT RAISE(ABORT, 'what was entered is never changed'); END;
CREATE TRIGGER versions_no_delete BEFORE DELETE ON versions BEGIN SELECT RAISE(ABORT, 'what was entered is never changed'); END;
CREATE TRIGGER uploads_no_update BEFORE UPDATE ON uploads BEGIN SELECT RAISE(ABORT, 'what was entered is never changed'); END;
CREATE TRIGGER uploads_no_delete BEFORE DELETE ON uploads BEGIN SELECT RAISE(ABORT, 'what was entered is never changed'); END;
DELETE FROM "sqlite_sequence";
INSERT INTO "sqlite_sequence" VALUES('entries',3);
COMMIT;
