package haywright.app.store;

import java.util.List;
import java.util.Locale;
import org.jdbi.v3.core.Jdbi;

/**
 * What somebody said a name on a laboratory's sheets stands for, kept for the next sheet of that laboratory, whatever
 * ranch it is for.
 */
public final class LaboratoryNames {
    private final Jdbi jdbi;

    LaboratoryNames(Jdbi jdbi) {
        this.jdbi = jdbi;
    }

    /**
     * @param laboratory in lower case
     * @param name as the sheet writes it, in lower case
     * @param analyte its id; empty to leave it out
     * @param unit empty for as the file says
     * @param basis empty for as the file says
     */
    public record Said(String laboratory, String name, String analyte, String unit, String basis) {}

    /** By laboratory and name. */
    public List<Said> all() {
        return jdbi.withHandle(h -> h.createQuery(
                        "SELECT laboratory, name, analyte, unit, basis FROM laboratory_name ORDER BY laboratory, name")
                .map((row, context) -> new Said(
                        row.getString("laboratory"),
                        row.getString("name"),
                        row.getString("analyte"),
                        row.getString("unit"),
                        row.getString("basis")))
                .list());
    }

    /** What was said of the same name before is forgotten. */
    public void keep(Said said) {
        jdbi.useHandle(h -> h.execute(
                "INSERT INTO laboratory_name (laboratory, name, analyte, unit, basis) VALUES (?, ?, ?, ?, ?)"
                        + " ON CONFLICT (laboratory, name) DO UPDATE SET"
                        + " analyte = excluded.analyte, unit = excluded.unit, basis = excluded.basis",
                key(said.laboratory),
                said.name,
                said.analyte,
                said.unit,
                said.basis));
    }

    public void forget(String laboratory) {
        jdbi.useHandle(h -> h.execute("DELETE FROM laboratory_name WHERE laboratory = ?", key(laboratory)));
    }

    /** One name of a laboratory. */
    public void forget(String laboratory, String name) {
        jdbi.useHandle(
                h -> h.execute("DELETE FROM laboratory_name WHERE laboratory = ? AND name = ?", key(laboratory), name));
    }

    private static String key(String laboratory) {
        return laboratory.strip().toLowerCase(Locale.ROOT).replaceAll("\\s+", " ");
    }
}
