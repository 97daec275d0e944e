-- The players of a take come to the same numbers at about the same time. With the number before the
-- player their rows share the pages that a commit has to write; with the player first each row of a
-- commit had a page of its own.
CREATE TABLE attack_as_it_comes (
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
  PRIMARY KEY (take, seq, player)
) STRICT, WITHOUT ROWID;

INSERT INTO attack_as_it_comes
SELECT take, player, seq, micros, raw_micros, velocity, pitch, length_millis, late_by_millis, unsure,
       set_aside
FROM attack ORDER BY take, seq, player;

DROP TABLE attack;

ALTER TABLE attack_as_it_comes RENAME TO attack;
