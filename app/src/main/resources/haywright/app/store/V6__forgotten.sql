-- Since when nothing has spoken of a file, in milliseconds of 1970: what is just being saved is not swept away beneath it.
ALTER TABLE attachment ADD COLUMN forgotten BIGINT;
