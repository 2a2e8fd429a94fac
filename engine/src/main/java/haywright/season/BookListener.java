package haywright.season;

import haywright.season.play.Plan;
import haywright.season.play.Played;

/** Told as a book is made. Called one at a time, on whatever thread. */
public interface BookListener {
    /** Told nothing. */
    BookListener NONE = new BookListener() {};

    /** The first plan, before any winter is played. */
    default void planned(Plan plan) {}

    /** One more winter. @param done so far. @param of that are to be played at most */
    default void played(int done, int of, Played winter) {}

    /** What is done now: {@code choosing how hard a winter to plan for}. */
    default void doing(String what) {}
}
