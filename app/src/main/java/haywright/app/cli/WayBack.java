package haywright.app.cli;

import haywright.app.store.BadDatabase;
import haywright.app.words.Show;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** What the terminal says of a database that cannot be used. */
final class WayBack {
    private WayBack() {}

    static List<String> lines(BadDatabase bad) {
        var lines = new ArrayList<String>();
        lines.add(bad.line() + ". Nothing was changed.");
        bad.newest()
                .ifPresentOrElse(
                        copy -> {
                            lines.add("The newest good copy is of %s, %s: %s"
                                    .formatted(Show.date(copy.day()), ranches(copy.ranches()), copy.file()));
                            lines.add("To go back to it: ./haywright ranch restore --newest --data "
                                    + quoted(bad.folder().path()));
                            if (Files.exists(bad.folder().database())) {
                                lines.add("The database that is there now is renamed by that, not deleted.");
                            }
                        },
                        () -> lines.add("There is no daily copy that can be read in "
                                + bad.folder().copies() + ". Move the database elsewhere to begin anew, and"
                                + " restore a backup with: ./haywright ranch restore FILE"));
        return lines;
    }

    static String ranches(int number) {
        return number == 1 ? "1 ranch" : number + " ranches";
    }

    private static String quoted(Path path) {
        var text = path.toAbsolutePath().toString();
        return text.matches("[A-Za-z0-9/._-]+") ? text : "'" + text.replace("'", "'\\''") + "'";
    }
}
