/** The store's schema, one numbered step after another; a step that has shipped is never edited. */
export const migrations: readonly string[] = [
	`CREATE TABLE record (seq INTEGER PRIMARY KEY, id TEXT NOT NULL UNIQUE, kind TEXT NOT NULL, at TEXT NOT NULL, follows TEXT, sealed BLOB NOT NULL) STRICT;
	CREATE TRIGGER record_stays BEFORE UPDATE ON record BEGIN SELECT RAISE(ABORT, 'a record is never changed'); END;
	CREATE TRIGGER record_kept BEFORE DELETE ON record BEGIN SELECT RAISE(ABORT, 'a record is never deleted'); END;
	CREATE TABLE draft (id TEXT PRIMARY KEY, sealed BLOB NOT NULL, at TEXT NOT NULL) STRICT;
	CREATE TABLE keyslot (slot TEXT PRIMARY KEY, cost INTEGER NOT NULL, salt BLOB NOT NULL, sealed BLOB NOT NULL) STRICT;`,
]
