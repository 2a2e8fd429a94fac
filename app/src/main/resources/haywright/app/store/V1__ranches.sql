-- One set for SQLite and PostgreSQL. The document is the record; nothing here repeats what it holds, but its name.
CREATE TABLE ranch (
    id         TEXT PRIMARY KEY,
    name       TEXT NOT NULL,
    rev        BIGINT NOT NULL CHECK (rev >= 1),
    format     INTEGER NOT NULL,
    doc        TEXT NOT NULL,
    deleted_at TEXT
);

CREATE TABLE edit (
    ranch_id      TEXT NOT NULL REFERENCES ranch (id),
    rev           BIGINT NOT NULL,
    at            TEXT NOT NULL,
    who           TEXT NOT NULL,
    words         TEXT NOT NULL,
    inverse_patch TEXT NOT NULL,
    PRIMARY KEY (ranch_id, rev)
);

-- No reference to ranch: the form for a new ranch has none yet.
CREATE TABLE draft (
    ranch_id TEXT NOT NULL,
    form     TEXT NOT NULL,
    fields   TEXT NOT NULL,
    PRIMARY KEY (ranch_id, form)
);

CREATE TABLE attachment (
    sha256 TEXT PRIMARY KEY,
    type   TEXT NOT NULL,
    body   ${bytes} NOT NULL
);
