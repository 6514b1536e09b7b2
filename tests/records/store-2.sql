-- A store as version 2 wrote it.
BEGIN TRANSACTION;
CREATE TABLE alembic_version (
	version_num VARCHAR(32) NOT NULL, 
	CONSTRAINT alembic_version_pkc PRIMARY KEY (version_num)
);
INSERT INTO "alembic_version" VALUES('0002');
CREATE TABLE chapters (
	happening INTEGER NOT NULL, 
	title TEXT NOT NULL, 
	since DATE, 
	until DATE, 
	shortest DOUBLE NOT NULL, 
	longest DOUBLE NOT NULL, 
	tyre TEXT NOT NULL, 
	load_state TEXT NOT NULL, 
	grounds TEXT NOT NULL, 
	broke TEXT NOT NULL, 
	PRIMARY KEY (happening), 
	FOREIGN KEY(happening) REFERENCES happenings (number)
);
CREATE TABLE components (
	"key" VARCHAR(64) NOT NULL, 
	kind VARCHAR(32) NOT NULL, 
	name TEXT NOT NULL, 
	mark TEXT NOT NULL, 
	at DATETIME NOT NULL, 
	PRIMARY KEY ("key")
);
INSERT INTO "components" VALUES('hub-1','hub','left hub','three dots','2026-11-25 15:26:53.279185');
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
INSERT INTO "entries" VALUES(1,'heron-front','began','front','Heron','phone',NULL,'2026-11-25 15:26:53.246851');
INSERT INTO "entries" VALUES(2,'heron-front','answer','weight.axle','1510 kg','','phone-1','2026-11-25 15:26:53.254714');
CREATE TABLE fitments (
	begun INTEGER NOT NULL, 
	component VARCHAR(64) NOT NULL, 
	rig VARCHAR(64) NOT NULL, 
	place VARCHAR(80) NOT NULL, 
	ended INTEGER, 
	PRIMARY KEY (begun), 
	FOREIGN KEY(begun) REFERENCES happenings (number), 
	FOREIGN KEY(component) REFERENCES components ("key"), 
	FOREIGN KEY(rig) REFERENCES rigs (slug), 
	FOREIGN KEY(ended) REFERENCES happenings (number)
);
INSERT INTO "fitments" VALUES(3,'hub-1','heron-front','left hub',NULL);
CREATE TABLE fitted (
	happening INTEGER NOT NULL, 
	component TEXT NOT NULL, 
	place TEXT NOT NULL, 
	PRIMARY KEY (happening), 
	FOREIGN KEY(happening) REFERENCES happenings (number)
);
INSERT INTO "fitted" VALUES(3,'hub-1','left hub');
CREATE TABLE happenings (
	number INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT, 
	rig VARCHAR(64) NOT NULL, 
	kind VARCHAR(16) NOT NULL, 
	day DATE NOT NULL, 
	odometer DOUBLE, 
	who TEXT NOT NULL, 
	note TEXT NOT NULL, 
	device VARCHAR(64) NOT NULL, 
	"key" VARCHAR(80), 
	replaces INTEGER, 
	at DATETIME NOT NULL, 
	CONSTRAINT happenings_key_once UNIQUE (rig, "key"), 
	CONSTRAINT happenings_replaced_once UNIQUE (replaces), 
	FOREIGN KEY(rig) REFERENCES rigs (slug), 
	FOREIGN KEY(replaces) REFERENCES happenings (number)
);
INSERT INTO "happenings" VALUES(1,'heron-front','reading','2026-05-03',NULL,'Ada','','',NULL,NULL,'2026-11-25 15:26:53.266658');
INSERT INTO "happenings" VALUES(2,'heron-front','reading','2026-05-03',NULL,'','','',NULL,1,'2026-11-25 15:26:53.274315');
INSERT INTO "happenings" VALUES(3,'heron-front','fitted','2026-05-03',NULL,'','','',NULL,NULL,'2026-11-25 15:26:53.280096');
INSERT INTO "happenings" VALUES(4,'heron-front','look','2026-05-03',NULL,'','','',NULL,NULL,'2026-11-25 15:26:53.287577');
CREATE TABLE hits (
	happening INTEGER NOT NULL, 
	what TEXT NOT NULL, 
	side TEXT NOT NULL, 
	speed DOUBLE, 
	PRIMARY KEY (happening), 
	FOREIGN KEY(happening) REFERENCES happenings (number)
);
CREATE TABLE jobs (
	happening INTEGER NOT NULL, 
	task TEXT NOT NULL, 
	part TEXT NOT NULL, 
	side TEXT NOT NULL, 
	interval TEXT NOT NULL, 
	torque TEXT NOT NULL, 
	settles INTEGER NOT NULL, 
	component TEXT NOT NULL, 
	PRIMARY KEY (happening), 
	FOREIGN KEY(happening) REFERENCES happenings (number)
);
CREATE TABLE looks (
	happening INTEGER NOT NULL, 
	occasion TEXT NOT NULL, 
	look TEXT NOT NULL, 
	state TEXT NOT NULL, 
	part TEXT NOT NULL, 
	side TEXT NOT NULL, 
	found TEXT NOT NULL, 
	until DATE, 
	until_distance DOUBLE, 
	until_trips INTEGER, 
	PRIMARY KEY (happening), 
	FOREIGN KEY(happening) REFERENCES happenings (number)
);
INSERT INTO "looks" VALUES(4,'before_trip','before_joints','stop','tie rod','left','loose',NULL,NULL,NULL);
CREATE TABLE noticed (
	happening INTEGER NOT NULL, 
	about TEXT NOT NULL, 
	answers TEXT NOT NULL, 
	PRIMARY KEY (happening), 
	FOREIGN KEY(happening) REFERENCES happenings (number)
);
CREATE TABLE own_limits (
	happening INTEGER NOT NULL, 
	"limit" TEXT NOT NULL, 
	low DOUBLE, 
	high DOUBLE, 
	kind TEXT NOT NULL, 
	given TEXT NOT NULL, 
	printed TEXT NOT NULL, 
	PRIMARY KEY (happening), 
	FOREIGN KEY(happening) REFERENCES happenings (number)
);
CREATE TABLE photos (
	happening INTEGER NOT NULL, 
	digest VARCHAR(64) NOT NULL, 
	PRIMARY KEY (happening, digest), 
	FOREIGN KEY(happening) REFERENCES happenings (number), 
	FOREIGN KEY(digest) REFERENCES uploads (digest)
);
INSERT INTO "photos" VALUES(1,'55c64d0fcd6f9d5f7c828093857e3fdfda68478bb4e9bd24d481ef391c7804e8');
CREATE TABLE readings (
	happening INTEGER NOT NULL, 
	quantity TEXT NOT NULL, 
	value DOUBLE NOT NULL, 
	kind TEXT NOT NULL, 
	unit TEXT NOT NULL, 
	given TEXT NOT NULL, 
	standard DOUBLE NOT NULL, 
	freedom DOUBLE, 
	side TEXT NOT NULL, 
	instrument TEXT NOT NULL, 
	repeats TEXT NOT NULL, 
	load_state TEXT NOT NULL, 
	bearing TEXT NOT NULL, 
	conditions TEXT NOT NULL, 
	corrected DOUBLE NOT NULL, 
	procedure TEXT NOT NULL, 
	component TEXT NOT NULL, 
	PRIMARY KEY (happening), 
	FOREIGN KEY(happening) REFERENCES happenings (number)
);
INSERT INTO "readings" VALUES(1,'camber',-0.0087,'angle','deg','-0.5 deg',0.0015,NULL,'left','','[-0.0087]','','not said','',0.0,'','');
INSERT INTO "readings" VALUES(2,'camber',-0.0087,'angle','deg','-0.5 deg',0.0015,NULL,'right','','[-0.0087]','','not said','',0.0,'','');
CREATE TABLE remarks (
	happening INTEGER NOT NULL, 
	about TEXT NOT NULL, 
	PRIMARY KEY (happening), 
	FOREIGN KEY(happening) REFERENCES happenings (number)
);
CREATE TABLE rigs (
	slug VARCHAR(64) NOT NULL, 
	name VARCHAR(80) NOT NULL, 
	axle VARCHAR(5) NOT NULL, 
	began DATETIME NOT NULL, 
	PRIMARY KEY (slug)
);
INSERT INTO "rigs" VALUES('heron-front','Heron','front','2026-11-25 15:26:53.246851');
CREATE TABLE taken_off (
	happening INTEGER NOT NULL, 
	component TEXT NOT NULL, 
	reason TEXT NOT NULL, 
	PRIMARY KEY (happening), 
	FOREIGN KEY(happening) REFERENCES happenings (number)
);
CREATE TABLE texts (
	digest VARCHAR(64) NOT NULL, 
	text TEXT NOT NULL, 
	kept DATETIME NOT NULL, 
	PRIMARY KEY (digest)
);
CREATE TABLE trips (
	happening INTEGER NOT NULL, 
	name TEXT NOT NULL, 
	distance DOUBLE NOT NULL, 
	duration DOUBLE, 
	grounds TEXT NOT NULL, 
	load_state TEXT NOT NULL, 
	pressure DOUBLE, 
	water DOUBLE, 
	temperature DOUBLE, 
	PRIMARY KEY (happening), 
	FOREIGN KEY(happening) REFERENCES happenings (number)
);
CREATE TABLE uploads (
	digest VARCHAR(64) NOT NULL, 
	size INTEGER NOT NULL, 
	name VARCHAR(120) NOT NULL, 
	at DATETIME NOT NULL, 
	PRIMARY KEY (digest)
);
INSERT INTO "uploads" VALUES('55c64d0fcd6f9d5f7c828093857e3fdfda68478bb4e9bd24d481ef391c7804e8',5,'IMG_1.jpg','2026-11-25 15:26:53.262612');
CREATE TABLE versions (
	entry INTEGER NOT NULL, 
	digest VARCHAR(64) NOT NULL, 
	PRIMARY KEY (entry), 
	FOREIGN KEY(entry) REFERENCES entries (number), 
	FOREIGN KEY(digest) REFERENCES texts (digest)
);
CREATE TABLE withdrawn (
	happening INTEGER NOT NULL, 
	reason TEXT NOT NULL, 
	PRIMARY KEY (happening), 
	FOREIGN KEY(happening) REFERENCES happenings (number)
);
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
CREATE INDEX happenings_by_rig ON happenings (rig, day, number);
CREATE UNIQUE INDEX fitments_one_place ON fitments (component) WHERE ended IS NULL;
CREATE UNIQUE INDEX fitments_one_part ON fitments (rig, place) WHERE ended IS NULL;
CREATE TRIGGER fitments_no_update BEFORE UPDATE ON fitments FOR EACH ROW WHEN (NOT (OLD.ended IS NULL AND NEW.ended IS NOT NULL AND NEW.begun = OLD.begun AND NEW.component = OLD.component AND NEW.rig = OLD.rig AND NEW.place = OLD.place)) BEGIN SELECT RAISE(ABORT, 'what was entered is never changed'); END;
CREATE TRIGGER fitments_no_delete BEFORE DELETE ON fitments FOR EACH ROW BEGIN SELECT RAISE(ABORT, 'what was entered is never changed'); END;
CREATE TRIGGER happenings_no_update BEFORE UPDATE ON happenings FOR EACH ROW BEGIN SELECT RAISE(ABORT, 'what was entered is never changed'); END;
CREATE TRIGGER happenings_no_delete BEFORE DELETE ON happenings FOR EACH ROW BEGIN SELECT RAISE(ABORT, 'what was entered is never changed'); END;
CREATE TRIGGER components_no_update BEFORE UPDATE ON components FOR EACH ROW BEGIN SELECT RAISE(ABORT, 'what was entered is never changed'); END;
CREATE TRIGGER components_no_delete BEFORE DELETE ON components FOR EACH ROW BEGIN SELECT RAISE(ABORT, 'what was entered is never changed'); END;
CREATE TRIGGER photos_no_update BEFORE UPDATE ON photos FOR EACH ROW BEGIN SELECT RAISE(ABORT, 'what was entered is never changed'); END;
CREATE TRIGGER photos_no_delete BEFORE DELETE ON photos FOR EACH ROW BEGIN SELECT RAISE(ABORT, 'what was entered is never changed'); END;
CREATE TRIGGER looks_no_update BEFORE UPDATE ON looks FOR EACH ROW BEGIN SELECT RAISE(ABORT, 'what was entered is never changed'); END;
CREATE TRIGGER looks_no_delete BEFORE DELETE ON looks FOR EACH ROW BEGIN SELECT RAISE(ABORT, 'what was entered is never changed'); END;
CREATE TRIGGER readings_no_update BEFORE UPDATE ON readings FOR EACH ROW BEGIN SELECT RAISE(ABORT, 'what was entered is never changed'); END;
CREATE TRIGGER readings_no_delete BEFORE DELETE ON readings FOR EACH ROW BEGIN SELECT RAISE(ABORT, 'what was entered is never changed'); END;
CREATE TRIGGER trips_no_update BEFORE UPDATE ON trips FOR EACH ROW BEGIN SELECT RAISE(ABORT, 'what was entered is never changed'); END;
CREATE TRIGGER trips_no_delete BEFORE DELETE ON trips FOR EACH ROW BEGIN SELECT RAISE(ABORT, 'what was entered is never changed'); END;
CREATE TRIGGER hits_no_update BEFORE UPDATE ON hits FOR EACH ROW BEGIN SELECT RAISE(ABORT, 'what was entered is never changed'); END;
CREATE TRIGGER hits_no_delete BEFORE DELETE ON hits FOR EACH ROW BEGIN SELECT RAISE(ABORT, 'what was entered is never changed'); END;
CREATE TRIGGER jobs_no_update BEFORE UPDATE ON jobs FOR EACH ROW BEGIN SELECT RAISE(ABORT, 'what was entered is never changed'); END;
CREATE TRIGGER jobs_no_delete BEFORE DELETE ON jobs FOR EACH ROW BEGIN SELECT RAISE(ABORT, 'what was entered is never changed'); END;
CREATE TRIGGER own_limits_no_update BEFORE UPDATE ON own_limits FOR EACH ROW BEGIN SELECT RAISE(ABORT, 'what was entered is never changed'); END;
CREATE TRIGGER own_limits_no_delete BEFORE DELETE ON own_limits FOR EACH ROW BEGIN SELECT RAISE(ABORT, 'what was entered is never changed'); END;
CREATE TRIGGER chapters_no_update BEFORE UPDATE ON chapters FOR EACH ROW BEGIN SELECT RAISE(ABORT, 'what was entered is never changed'); END;
CREATE TRIGGER chapters_no_delete BEFORE DELETE ON chapters FOR EACH ROW BEGIN SELECT RAISE(ABORT, 'what was entered is never changed'); END;
CREATE TRIGGER noticed_no_update BEFORE UPDATE ON noticed FOR EACH ROW BEGIN SELECT RAISE(ABORT, 'what was entered is never changed'); END;
CREATE TRIGGER noticed_no_delete BEFORE DELETE ON noticed FOR EACH ROW BEGIN SELECT RAISE(ABORT, 'what was entered is never changed'); END;
CREATE TRIGGER fitted_no_update BEFORE UPDATE ON fitted FOR EACH ROW BEGIN SELECT RAISE(ABORT, 'what was entered is never changed'); END;
CREATE TRIGGER fitted_no_delete BEFORE DELETE ON fitted FOR EACH ROW BEGIN SELECT RAISE(ABORT, 'what was entered is never changed'); END;
CREATE TRIGGER taken_off_no_update BEFORE UPDATE ON taken_off FOR EACH ROW BEGIN SELECT RAISE(ABORT, 'what was entered is never changed'); END;
CREATE TRIGGER taken_off_no_delete BEFORE DELETE ON taken_off FOR EACH ROW BEGIN SELECT RAISE(ABORT, 'what was entered is never changed'); END;
CREATE TRIGGER remarks_no_update BEFORE UPDATE ON remarks FOR EACH ROW BEGIN SELECT RAISE(ABORT, 'what was entered is never changed'); END;
CREATE TRIGGER remarks_no_delete BEFORE DELETE ON remarks FOR EACH ROW BEGIN SELECT RAISE(ABORT, 'what was entered is never changed'); END;
CREATE TRIGGER withdrawn_no_update BEFORE UPDATE ON withdrawn FOR EACH ROW BEGIN SELECT RAISE(ABORT, 'what was entered is never changed'); END;
CREATE TRIGGER withdrawn_no_delete BEFORE DELETE ON withdrawn FOR EACH ROW BEGIN SELECT RAISE(ABORT, 'what was entered is never changed'); END;
DELETE FROM "sqlite_sequence";
INSERT INTO "sqlite_sequence" VALUES('entries',2);
INSERT INTO "sqlite_sequence" VALUES('happenings',4);
COMMIT;
