package haywright.app.document;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import haywright.app.words.Version;
import haywright.ranch.Ranch;
import haywright.season.WinterBook;
import haywright.season.kept.KeptBook;
import haywright.season.kept.WinterStory;
import java.io.UncheckedIOException;
import java.lang.reflect.RecordComponent;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** A winter book as JSON, and the hash of all that moves one. */
public final class BookDocument {
    private static final JsonMapper MAPPER = JsonMapper.builder().build();

    /**
     * Parts of a ranch that no figure of a winter book comes from: a letter that is kept makes no book older. Last winter
     * counts by the factor in the settings that was taken from it.
     */
    private static final Set<String> BESIDE =
            Set.of("name", "letters", "signed", "contacts", "pens", "attachments", "samplings", "last_winter");

    private static final Set<String> NEVER_BELOW_ZERO =
            Set.of("kg", "askedKg", "loads", "emergencyKg", "head", "draws", "lasted", "years", "lasts");
    /** What is left of a stack may be nothing but for rounding. */
    private static final double LEAST_KG = -1;

    private static final double MOST = 1e12;
    private static final int FIRST_YEAR = 1900;
    private static final int LAST_YEAR = 3000;
    /** A book is of one winter. */
    private static final int MOST_DAYS = 1100;
    /** A year, and grass that comes late. */
    private static final int MOST_WEEKS = 80;

    /** One more where books of the same ranch come out otherwise than before. */
    private static final int MADE = 14;

    private BookDocument() {}

    /** Whether a change under this path of the document moves a book. */
    public static boolean moves(String path) {
        return !BESIDE.contains(path.split("/", -1)[0]);
    }

    /** Of a ranch as it is, by this build of the program; the day is not in it. */
    public static String hash(Ranch ranch) {
        var tree = new RanchDocument().tree(ranch);
        tree.remove(List.copyOf(BESIDE));
        if (tree.get("settings") instanceof ObjectNode settings) {
            settings.remove(List.of("adviser", "invented", "preset"));
        }
        for (var lot : tree.path("lots")) {
            ((ObjectNode) lot).remove(List.of("notes", "where"));
        }
        return Fingerprint.sha256(tree.put("build", Version.TEXT).put("made", MADE));
    }

    public static String write(KeptBook book) {
        try {
            return MAPPER.writeValueAsString(RecordForm.write(book));
        } catch (JsonProcessingException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * Empty where it is damaged, or another build of the program wrote it in another form: nothing on any page then says
     * what no book can say.
     */
    public static Optional<KeptBook> read(String document) {
        try {
            var book = RecordReader.read(MAPPER.readTree(document), KeptBook.class);
            return isWhole(book) && areSound(book, "", book.day()) ? Optional.of(book) : Optional.empty();
        } catch (JsonProcessingException | RuntimeException e) {
            return Optional.empty();
        }
    }

    /** Whether weeks follow one another, and nothing is said of more weeks or winters than there can be. */
    private static boolean isWhole(KeptBook book) {
        var begins = book.begins();
        return IntStream.range(1, begins.size()).allMatch(w -> begins.get(w - 1).isBefore(begins.get(w)))
                && (book.lasts() == null || book.lasts() <= WinterBook.OF)
                && book.lasted() <= book.draws()
                && book.shortWinters().stream().allMatch(one -> one.lasted() <= one.draws())
                && (!begins.isEmpty() || book.winters().isEmpty())
                && book.winters().stream().allMatch(winter -> winter.dollars().size() <= MOST_WEEKS)
                && Stream.concat(
                                book.lines().stream().map(KeptBook.Line::kg),
                                book.winters().stream()
                                        .flatMap(
                                                winter -> winter.lots().stream().map(WinterStory.Line::kg)))
                        .allMatch(kg -> !kg.isEmpty() && kg.size() <= MOST_WEEKS);
    }

    /** Whether each number and day in it can be one of this book. @param name of what it is part of */
    private static boolean areSound(@Nullable Object value, String name, LocalDate day) {
        if (value instanceof Number number) {
            double size = number.doubleValue();
            return Math.abs(size) <= MOST && (size >= LEAST_KG || !NEVER_BELOW_ZERO.contains(name));
        } else if (value instanceof LocalDate date) {
            return date.getYear() > FIRST_YEAR
                    && date.getYear() < LAST_YEAR
                    && Math.abs(ChronoUnit.DAYS.between(day, date)) <= MOST_DAYS;
        } else if (value instanceof List<?> list) {
            return list.stream().allMatch(each -> areSound(each, name, day));
        } else if (value instanceof Record record) {
            return Arrays.stream(record.getClass().getRecordComponents())
                    .allMatch(part -> areSound(of(record, part), part.getName(), day));
        }
        return true;
    }

    private static @Nullable Object of(Record record, RecordComponent part) {
        try {
            return part.getAccessor().invoke(record);
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException(e);
        }
    }
}
