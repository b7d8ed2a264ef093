/** The roll can be made anew from the records. */
export const rollTable = 'CREATE TABLE roll (seq INTEGER PRIMARY KEY, id TEXT NOT NULL, kind TEXT NOT NULL, at TEXT NOT NULL, follows TEXT, origin TEXT NOT NULL, tick INTEGER NOT NULL, number INTEGER NOT NULL, form INTEGER NOT NULL, about TEXT, thing TEXT, cardForm INTEGER NOT NULL, card BLOB) STRICT'

/** The store's schema, one numbered step after another; a step that has shipped is never edited. */
export const migrations: readonly string[] = [
	`CREATE TABLE record (seq INTEGER PRIMARY KEY, id TEXT NOT NULL UNIQUE, kind TEXT NOT NULL, at TEXT NOT NULL, follows TEXT, sealed BLOB NOT NULL) STRICT;
	CREATE TRIGGER record_stays BEFORE UPDATE ON record BEGIN SELECT RAISE(ABORT, 'a record is never changed'); END;
	CREATE TRIGGER record_kept BEFORE DELETE ON record BEGIN SELECT RAISE(ABORT, 'a record is never deleted'); END;
	CREATE TABLE draft (id TEXT PRIMARY KEY, sealed BLOB NOT NULL, at TEXT NOT NULL) STRICT;
	CREATE TABLE keyslot (slot TEXT PRIMARY KEY, cost INTEGER NOT NULL, salt BLOB NOT NULL, sealed BLOB NOT NULL) STRICT;`,
	// form 2 binds time, predecessor, origin and order into what is sealed; form 1 is bound as a
	// whole by the anchor record
	`ALTER TABLE record ADD COLUMN form INTEGER NOT NULL DEFAULT 1;
	ALTER TABLE record ADD COLUMN origin TEXT NOT NULL DEFAULT '';
	ALTER TABLE record ADD COLUMN tick INTEGER NOT NULL DEFAULT 0;
	CREATE INDEX record_order ON record (kind, tick, seq);
	CREATE TABLE card (record TEXT PRIMARY KEY, kind TEXT NOT NULL, about TEXT, thing TEXT, sealed BLOB NOT NULL) STRICT;
	CREATE INDEX card_about ON card (about, kind);
	CREATE INDEX card_thing ON card (thing, kind);
	CREATE TABLE setting (name TEXT PRIMARY KEY, value BLOB NOT NULL) STRICT;
	CREATE TABLE audit (seq INTEGER PRIMARY KEY, form INTEGER NOT NULL, sealed BLOB NOT NULL, hash BLOB NOT NULL) STRICT;
	CREATE TRIGGER audit_stays BEFORE UPDATE ON audit BEGIN SELECT RAISE(ABORT, 'an audit row is never changed'); END;
	CREATE TRIGGER audit_kept BEFORE DELETE ON audit BEGIN SELECT RAISE(ABORT, 'an audit row is never deleted'); END;`,
	// form 3 is an envelope that holds everything; the roll is the index of the records, checked whole
	// at each unlock. A key slot is a pair of keys, so that the data key can change without its person
	`ALTER TABLE record ADD COLUMN number INTEGER NOT NULL DEFAULT 0;
	${rollTable};
	INSERT INTO roll SELECT record.seq, record.id, record.kind, record.at, record.follows, record.origin, record.tick, record.number, record.form, card.about, card.thing, CASE WHEN card.record IS NULL THEN 0 ELSE 1 END, card.sealed FROM record LEFT JOIN card ON card.record = record.id;
	DROP TABLE card;
	DROP INDEX record_order;
	ALTER TABLE keyslot ADD COLUMN public BLOB;
	ALTER TABLE keyslot ADD COLUMN box BLOB;
	CREATE TABLE datakey (number INTEGER PRIMARY KEY, sealed BLOB NOT NULL, endorsement BLOB NOT NULL) STRICT;`,
]
