package haywright.app.report;

import haywright.diet.Feed;
import haywright.outlook.Yard;
import haywright.ranch.FeedForSale;
import haywright.ranch.Lot;
import haywright.ration.Portion;
import java.util.List;
import java.util.UUID;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Feeds by the names that people say.
 *
 * @param fed what is put out: no two of them may sound alike
 */
record SpokenFeeds(Yard yard, List<Portion> fed) {
    /** "12-8", "44 %" at the end of a name. */
    private static final Pattern GRADE = Pattern.compile("\\s+[0-9][0-9.,:/-]*\\s*%?$");

    @Nullable
    Lot lot(Portion portion) {
        return yard.ranch().lots().get(id(portion));
    }

    static UUID id(Portion portion) {
        return UUID.fromString(portion.feed().feed().id());
    }

    /** Without the figures of a grade, as people say it, where that leaves no two feeds of the same name. */
    String spoken(Feed feed) {
        return fed.stream()
                .filter(p -> p.feed().feed().equals(feed))
                .map(this::spoken)
                .findFirst()
                .orElse(feed.name());
    }

    String spoken(Portion portion) {
        var full = name(portion);
        var plain = briefly(withoutGrade(full));
        boolean alone = fed.stream()
                        .filter(p -> briefly(withoutGrade(name(p))).equals(plain))
                        .count()
                == 1;
        // the number of a lot called "M 679" is its name and no grade
        boolean isGrade = lot(portion) == null || plain.contains(" ");
        return alone && isGrade && !plain.isEmpty() ? plain : full;
    }

    /** {@code Failed barley} of "Failed barley, baled", where no other feed of the ranch begins so. */
    private String briefly(String name) {
        int comma = name.indexOf(", ");
        if (comma < 0) {
            return name;
        }
        var start = name.substring(0, comma);
        long alike = Stream.concat(
                        yard.ranch().lots().values().stream().map(Lot::name),
                        yard.ranch().feedsForSale().values().stream().map(FeedForSale::name))
                .filter(other -> other.startsWith(start))
                .count();
        return alike == 1 ? start : name;
    }

    /** {@code Range cubes} of "Range cubes, 20 %": what set the grade off goes with it. */
    private static String withoutGrade(String name) {
        return GRADE.matcher(name).replaceAll("").replaceAll("[\\s,;:/(–-]+$", "");
    }

    static String name(Portion portion) {
        return portion.feed().feed().name();
    }
}
