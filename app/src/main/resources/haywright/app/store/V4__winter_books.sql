-- The newest winter books of a ranch, each by the hash of what it was made from. Each can be made again.
CREATE TABLE winter_book (
    ranch_id TEXT NOT NULL REFERENCES ranch (id),
    hash     TEXT NOT NULL,
    rev      BIGINT NOT NULL,
    at       TEXT NOT NULL,
    doc      TEXT NOT NULL,
    PRIMARY KEY (ranch_id, hash)
);
