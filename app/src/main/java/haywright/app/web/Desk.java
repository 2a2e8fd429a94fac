package haywright.app.web;

import haywright.app.store.Store;
import haywright.ranch.Ranch;
import java.time.Clock;
import java.time.LocalDate;
import java.util.function.Supplier;

/**
 * What every page has at hand.
 *
 * @param demo the invented ranch that ships with the program
 */
public record Desk(Store store, Clock clock, Supplier<Ranch> demo) {
    /** Written into a ranch's history; the record is one person's, on their own machine. */
    public static final String WHO = "this computer";

    public LocalDate today() {
        return LocalDate.now(clock);
    }
}
