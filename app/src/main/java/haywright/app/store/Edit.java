package haywright.app.store;

import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One save in a ranch's history.
 *
 * @param rev the revision it made
 * @param at null where another program left something there that is no time
 * @param words what it did, in words: "Oat hay: nitrate typed in"
 * @param paths the entities it touched
 */
public record Edit(long rev, @Nullable Instant at, String who, String words, List<String> paths) {
    public Edit {
        paths = List.copyOf(paths);
    }
}
