package haywright.app.store;

import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** The database of a data folder cannot be used as it is. Nothing was changed; {@link DataFolder} knows the way back. */
public final class BadDatabase extends RuntimeException {
    private static final long serialVersionUID = 1;

    private final transient DataFolder folder;
    private final boolean empty;
    private final String rule;

    BadDatabase(DataFolder folder, boolean empty, String rule, @Nullable Throwable cause) {
        super(folder.database() + ": " + rule, cause);
        this.rule = rule;
        this.folder = folder;
        this.empty = empty;
    }

    public DataFolder folder() {
        return folder;
    }

    /** A line: the file, and what is wrong with it. */
    public String line() {
        return folder.database() + ": " + rule;
    }

    /** Whether there is nothing in it, so that to begin anew loses nothing. */
    public boolean isEmpty() {
        return empty;
    }

    /** The copy to go back to; empty when there is none that can be read. */
    public Optional<DataFolder.Copy> newest() {
        return folder.newestGood();
    }
}
