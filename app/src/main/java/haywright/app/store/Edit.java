package haywright.app.store;

import java.time.Instant;
import java.util.List;

/**
 * One save in a ranch's history.
 *
 * @param rev the revision it made
 * @param words what it did, in words: "Oat hay: nitrate typed in"
 * @param paths the entities it touched
 */
public record Edit(long rev, Instant at, String who, String words, List<String> paths) {
    public Edit {
        paths = List.copyOf(paths);
    }
}
