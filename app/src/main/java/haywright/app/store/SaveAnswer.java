package haywright.app.store;

import haywright.ranch.Ranch;
import java.util.List;

/** What became of a save. */
public sealed interface SaveAnswer {
    /** It stands, together with whatever others saved meanwhile. */
    record Saved(Ranch ranch, long rev) implements SaveAnswer {}

    /**
     * Nothing was changed: somebody else saved the same entities meanwhile. Both are here, so that a person can choose
     * and save again on {@code rev}.
     *
     * @param mine the ranch as this save would have left it
     * @param theirs the ranch as it stands
     * @param rev of {@code theirs}
     * @param paths the entities that both touched
     */
    record Conflict(Ranch mine, Ranch theirs, long rev, List<String> paths) implements SaveAnswer {
        public Conflict {
            paths = List.copyOf(paths);
        }
    }
}
