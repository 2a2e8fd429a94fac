-- A form that was left unfinished is kept under the address of its page, so that the ranch's page can lead there.
UPDATE draft SET form = 'herd/' || substr(form, 7) WHERE form LIKE 'group/%' AND form NOT LIKE '%?%';
UPDATE draft SET form = 'herd/' || substr(form, 7) || '/split' WHERE form LIKE 'split/%' AND form NOT LIKE '%?%';
UPDATE draft SET form = 'herd/' || substr(form, 6) || '/join' WHERE form LIKE 'join/%' AND form NOT LIKE '%?%';
UPDATE draft SET form = 'bench/' || substr(form, 8) || '/wishes' WHERE form LIKE 'wishes/%' AND form NOT LIKE '%?%';
UPDATE draft SET form = 'bench/' || substr(form, 6) || '/hand' WHERE form LIKE 'hand/%' AND form NOT LIKE '%?%';

-- What a form sent, by a print of it, and where it led: pressed twice it is saved once.
ALTER TABLE edit ADD COLUMN sent TEXT;
