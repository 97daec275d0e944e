-- A room, its word and its latest state; epoch fences off every earlier opener.
CREATE TABLE room (
  id        TEXT    NOT NULL PRIMARY KEY,
  word      TEXT    NOT NULL,
  epoch     INTEGER NOT NULL,
  state     TEXT,
  opened_at TEXT    NOT NULL,
  closed_at TEXT
) STRICT;

CREATE UNIQUE INDEX open_word ON room (word) WHERE closed_at IS NULL;

-- A take without its attacks; room is null where it came from a file.
CREATE TABLE take (
  number      INTEGER NOT NULL PRIMARY KEY,
  id          TEXT    NOT NULL UNIQUE,
  room        TEXT,
  epoch       INTEGER,
  title       TEXT    NOT NULL,
  file        TEXT    NOT NULL,
  begun_at    TEXT    NOT NULL,
  end_micros  INTEGER,
  ended       TEXT,
  review      TEXT,
  provisional INTEGER
) STRICT;

CREATE INDEX take_room ON take (room);

CREATE TABLE take_player (
  take     INTEGER NOT NULL REFERENCES take (number) ON DELETE CASCADE,
  player   INTEGER NOT NULL,
  id       TEXT    NOT NULL,
  name     TEXT    NOT NULL,
  last_seq INTEGER,
  PRIMARY KEY (take, player)
) STRICT, WITHOUT ROWID;

-- The key is what makes a resend harmless.
CREATE TABLE attack (
  take           INTEGER NOT NULL REFERENCES take (number) ON DELETE CASCADE,
  player         INTEGER NOT NULL,
  seq            INTEGER NOT NULL,
  micros         INTEGER NOT NULL,
  raw_micros     INTEGER,
  velocity       INTEGER,
  pitch          INTEGER,
  length_millis  REAL,
  late_by_millis REAL,
  unsure         INTEGER NOT NULL,
  set_aside      INTEGER NOT NULL DEFAULT 0,
  PRIMARY KEY (take, player, seq)
) STRICT, WITHOUT ROWID;

-- Spans in which a player's connection was gone; away only where nothing was played in them.
CREATE TABLE gone (
  take        INTEGER NOT NULL REFERENCES take (number) ON DELETE CASCADE,
  player      INTEGER NOT NULL,
  from_micros INTEGER NOT NULL,
  to_micros   INTEGER NOT NULL,
  PRIMARY KEY (take, player, from_micros)
) STRICT, WITHOUT ROWID;
