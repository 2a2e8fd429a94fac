package haywright.ranch;

import haywright.cattle.herd.Group;
import java.nio.charset.StandardCharsets;
import java.util.Collection;
import java.util.Locale;
import java.util.UUID;

/** What is printed on a sheet so that it finds home: a letter for its kind and five signs of what it is for. */
public final class SheetCode {
    private SheetCode() {}

    public static String ofWeights(Lot lot) {
        return of("W", lot.id());
    }

    public static String ofScores(Group group) {
        return of("C", group.id());
    }

    /**
     * Of a week: another one as soon as there is another group or lot, or one is counted otherwise, since each box of the sheet
     * stands for one.
     */
    public static String ofWeek(Collection<String> boxes) {
        return of("F", UUID.nameUUIDFromBytes(String.join(" ", boxes).getBytes(StandardCharsets.UTF_8)));
    }

    /** Five signs of an id, short enough for a cold hand, and none that looks like another. */
    static String of(String kind, UUID id) {
        var all = Long.toString(id.getLeastSignificantBits() >>> 1, 36)
                .toUpperCase(Locale.ROOT)
                .replace('I', '7')
                .replace('O', '8');
        return kind + all.substring(Math.max(0, all.length() - 5));
    }
}
