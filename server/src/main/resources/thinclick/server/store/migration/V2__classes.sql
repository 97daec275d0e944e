-- A class: what it is called and how long its takes are kept (null: as the host does it, 0: for ever).
CREATE TABLE class (
  number      INTEGER NOT NULL PRIMARY KEY,
  title       TEXT    NOT NULL,
  key         TEXT    NOT NULL UNIQUE,
  keep_months INTEGER,
  made_at     TEXT    NOT NULL
) STRICT;

-- Who was written into it; who merely played in it is known from its takes.
CREATE TABLE class_member (
  class      INTEGER NOT NULL REFERENCES class (number) ON DELETE CASCADE,
  key        TEXT    NOT NULL,
  name       TEXT    NOT NULL,
  chair      INTEGER,
  instrument TEXT,
  written_at TEXT    NOT NULL,
  PRIMARY KEY (class, key)
) STRICT, WITHOUT ROWID;

-- The class that a room was opened for, and that a take belongs to.
ALTER TABLE room ADD COLUMN class INTEGER REFERENCES class (number) ON DELETE SET NULL;
ALTER TABLE take ADD COLUMN class INTEGER REFERENCES class (number) ON DELETE SET NULL;

CREATE INDEX take_class ON take (class);
