-- What could not be read of a ranch when its last good revision took its place, exactly as it was.
CREATE TABLE set_aside (
    ranch_id TEXT NOT NULL REFERENCES ranch (id),
    rev      BIGINT NOT NULL,
    at       TEXT NOT NULL,
    doc      TEXT NOT NULL,
    PRIMARY KEY (ranch_id, rev)
);
