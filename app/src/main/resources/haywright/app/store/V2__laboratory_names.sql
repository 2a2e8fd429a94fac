-- What somebody said a name on a laboratory's sheet stands for. It belongs to the laboratory, so to no ranch.
-- Empty analyte: leave it out. Empty unit or basis: as the file says.
CREATE TABLE laboratory_name (
    laboratory TEXT NOT NULL,
    name       TEXT NOT NULL,
    analyte    TEXT NOT NULL,
    unit       TEXT NOT NULL,
    basis      TEXT NOT NULL,
    PRIMARY KEY (laboratory, name)
);
