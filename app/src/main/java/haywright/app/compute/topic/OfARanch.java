package haywright.app.compute.topic;

import com.fasterxml.jackson.databind.node.ObjectNode;
import haywright.app.document.RanchDocument;
import haywright.feeding.Rations;
import haywright.ranch.Lot;
import haywright.ranch.Ranch;
import haywright.workings.Refused;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What the topics that look at a whole ranch have in common: its document, and the day. */
public final class OfARanch {
    static final String WORDS =
            "A ranch document as an export writes it; it may be sent by itself, in place of the question.";

    static final String DATE = "The day that is looked at; the ranch's own fixed day or today when not said.";

    private static final int FIRST = 1900;
    private static final int LAST = 2200;

    private OfARanch() {}

    /** Whether a topic is asked about a whole ranch. */
    public static boolean isAsked(Topic<?, ?> topic) {
        return Arrays.stream(topic.in().getRecordComponents()).anyMatch(c -> c.getType() == ObjectNode.class);
    }

    /** @throws Refused naming everything that is wrong with the document */
    static Rations rations(ObjectNode ranch, @Nullable LocalDate date) {
        var document = new RanchDocument();
        var read = document.ranch(document.newest(ranch));
        var day = date == null ? read.settings().fixedToday() : date;
        if (day == null) {
            throw new Refused(
                    "date", "nothing", "needs and stocks are those of a day", "Add date, for instance 2026-12-01.");
        }
        if (day.getYear() < FIRST || day.getYear() > LAST) {
            throw new Refused(
                    "date",
                    day.toString(),
                    "a ranch is looked at from %d to %d".formatted(FIRST, LAST),
                    "Is the year right?");
        }
        return new Rations(read, day);
    }

    /**
     * Its lots, or the one of this name.
     *
     * @throws Refused where it has none of this name
     */
    public static List<Lot> lots(Ranch ranch, @Nullable String name) {
        var all = List.copyOf(ranch.lots().values());
        if (name == null) {
            return all;
        }
        var named = all.stream().filter(l -> l.name().equalsIgnoreCase(name)).toList();
        if (named.size() != 1) {
            throw new Refused(
                    "lot",
                    name,
                    named.isEmpty() ? "the ranch has no lot of this name" : "two lots of the ranch have this name",
                    "It has " + String.join(", ", all.stream().map(Lot::name).toList()) + ".");
        }
        return named;
    }

    /** An invented ranch of one group and one stack. */
    static String small() {
        try (InputStream in = OfARanch.class.getResourceAsStream("small-ranch.json")) {
            if (in == null) {
                throw new IllegalStateException("small-ranch.json is missing beside " + OfARanch.class.getName());
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
