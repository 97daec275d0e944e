-- Takes that somebody dropped, by which they go from the backups too. One that is here again stays.
CREATE TABLE dropped_take (
  id         TEXT NOT NULL PRIMARY KEY,
  dropped_at TEXT NOT NULL
) STRICT, WITHOUT ROWID;
