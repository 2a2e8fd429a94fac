package haywright.app.exchange.lab;

import haywright.forage.Analyte;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.IntPredicate;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * The reports that follow each other on one sheet, and which of them do not stand: those that the sheet takes back in a
 * title or a sentence, and the earlier ones of several revisions of one report.
 */
public final class Revisions {
    /** Before what a sheet says of itself, where somebody says whether its figures count all the same. */
    static final String REPORT = "report ";

    private static final int MOST_WORDS_OF_A_HEAD = 14;
    private static final int MOST_WORDS = 30;
    private static final Pattern REVISION = Pattern.compile(
            "(?iu)(?<![\\p{L}\\p{N}])(?:revision|revised|rev\\.?|version|ver\\.?|v\\.?|issue|edition|amendment)(?: (?:no\\.?|number))?\\s?[:#.]?\\s?([0-9]{1,2})(?![\\p{L}\\p{N}/-]|[.,][0-9])");
    private static final Pattern NUMBER = Pattern.compile(
            "(?iu)(?<![\\p{L}\\p{N}])(?:report|certificate|analysis|results?|work order|order|accession|submission|job|lab)(?: of (?:analysis|test(?:ing)?|results?))?,?(?: (?:no\\.?|number|nr\\.?|id|#))?\\s?[:#.]?\\s?#?\\s?([\\p{L}]{0,4}[-/]?[0-9][\\p{L}\\p{N}/-]*)");
    private static final Pattern HEAD = Pattern.compile(
            "(?iu)^\\W*(?:(?:laboratory|lab|test|analytical|forage|hay|feed|final|original|first|corrected|amended|revised|updated|replacement|superseded|preliminary|interim|draft|provisional|void|voided|cancell?ed|new|old|earlier|current|duplicate|copy of) )*(?:reports?|certificate|results?|analysis|revision|version|issue)\\b(?!.*\\b(?:are|is|was|were)\\b).*");
    private static final Pattern LATER = Pattern.compile(
            "(?iu)(?<!\\p{L})(?:corrected|amended|revised|updated|replacement|final|current)(?!\\p{L})");
    private static final Pattern EARLIER =
            Pattern.compile("(?iu)(?<!\\p{L})(?:original|first|initial|uncorrected)(?!\\p{L})");
    private static final Pattern OF_ALL = Pattern.compile(
            "(?iu)(?<!\\p{L})(?:report|certificate|sheet|page|document|copy|everything|all(?: the)? (?:results?|figures?|values?|samples?))(?!\\p{L})");
    private static final Pattern TOKEN = Pattern.compile("[\\p{L}\\p{N}][\\p{L}\\p{N}_/-]*[0-9][\\p{L}\\p{N}_/-]*");

    private final List<String> lines;
    private final Map<Integer, Set<Analyte>> figures;
    private final IntPredicate names;
    private final Vocabulary words;
    private final Map<Integer, String> whys = new TreeMap<>();
    private final List<Understood.Column> asked = new ArrayList<>();

    /** @param revision null where its head says none @param rank 1 corrected, −1 original, 0 where it says neither */
    private record Report(
            int from, int to, String number, @Nullable Integer revision, int rank, String head) {}

    private Revisions(List<String> lines, Map<Integer, Set<Analyte>> figures, IntPredicate names, Vocabulary words) {
        this.lines = lines;
        this.figures = figures;
        this.names = names;
        this.words = words;
    }

    /**
     * @param lines of the sheet; empty where one says what a mark means, or holds several cells that are of no report as a
     *     whole
     * @param figures the places of lines with figures, and of which analytes they are
     * @param names whether a line says which sample the figures under it are of
     */
    public static Revisions in(
            List<String> lines, Map<Integer, Set<Analyte>> figures, IntPredicate names, Vocabulary words) {
        var found = new Revisions(lines, figures, names, words);
        var reports = found.reports();
        found.later(reports);
        reports.forEach(found::takenBack);
        return found;
    }

    /** Why the line of this place is of no report that stands; empty where it is. */
    public Optional<String> why(int at) {
        return Optional.ofNullable(whys.get(at));
    }

    /** What calls itself preliminary: whether it counts is asked. */
    public List<Understood.Column> asked() {
        return List.copyOf(asked);
    }

    private List<Report> reports() {
        var heads = new ArrayList<Integer>();
        for (int at = 0; at < lines.size(); at++) {
            if (!figures.containsKey(at) && isHead(lines.get(at))) {
                heads.add(at);
            }
        }
        var reports = new ArrayList<Report>();
        for (int i = 0; i < heads.size(); i++) {
            int from = i == 0 ? 0 : heads.get(i);
            int next = i + 1 < heads.size() ? heads.get(i + 1) : lines.size();
            boolean isBare = figures.keySet().stream().noneMatch(at -> from <= at && at < next);
            if (isBare && i + 1 < heads.size()) { // several lines head one report
                heads.set(i + 1, from);
                lines.set(from, lines.get(from) + "\n" + lines.get(next));
                continue;
            }
            reports.add(report(from, next, lines.get(heads.get(i))));
        }
        return reports.isEmpty() ? List.of(report(0, lines.size(), "")) : reports;
    }

    private static boolean isHead(String line) {
        return isTitle(line) && (NUMBER.matcher(line).find() || isOne(line));
    }

    private static boolean isTitle(String line) {
        return !line.isBlank()
                && line.split("\\s+").length <= MOST_WORDS_OF_A_HEAD
                && HEAD.matcher(line).matches();
    }

    /** Whether a line heads one of several revisions of a report. */
    public static boolean isOne(String line) {
        return isTitle(line)
                && (REVISION.matcher(line).find()
                        || LATER.matcher(line).find()
                        || EARLIER.matcher(line).find()
                        || Standing.of(line).isDoubtful());
    }

    private static Report report(int from, int to, String head) {
        var revision = REVISION.matcher(head);
        var number = NUMBER.matcher(REVISION.matcher(head).replaceAll(" "));
        return new Report(
                from,
                to,
                number.find() ? Heading.key(number.group(1)) : "",
                revision.find() ? Integer.valueOf(revision.group(1)) : null,
                LATER.matcher(head).find() ? 1 : EARLIER.matcher(head).find() ? -1 : 0,
                head);
    }

    /** Of several revisions of one report the last one stands. */
    private void later(List<Report> reports) {
        for (var report : reports) {
            reports.stream()
                    .filter(other -> other != report
                            && other.number.equals(report.number)
                            && (!report.number.isEmpty() || areOfOneSample(other, report))
                            && Standing.of(other.head) == Standing.STANDS
                            && isLater(other, report))
                    .findFirst()
                    .ifPresent(other -> close(
                            report.from,
                            report.to,
                            "a later one of the same report stands on the sheet: “%s”".formatted(first(other.head))));
        }
    }

    /** Where neither has a number: not of two samples with a name each. */
    private boolean areOfOneSample(Report one, Report other) {
        var mine = named(one);
        var others = named(other);
        return mine.isEmpty() || others.isEmpty() || mine.stream().anyMatch(others::contains);
    }

    private List<String> named(Report report) {
        return IntStream.range(report.from, report.to)
                .filter(names)
                .mapToObj(lines::get)
                .map(Heading::key)
                .toList();
    }

    private static String first(String head) {
        return head.strip().lines().findFirst().orElse("").replaceAll("\\s+", " ");
    }

    private static boolean isLater(Report one, Report other) {
        return one.revision != null || other.revision != null
                ? (one.revision == null ? 0 : one.revision) > (other.revision == null ? 0 : other.revision)
                : one.rank > other.rank;
    }

    /** What a title or a sentence of a report takes back: one analyte, one sample, or all of it. */
    private void takenBack(Report report) {
        var parts = new ArrayList<Integer>();
        for (int at = report.from; at < report.to; at++) {
            if (names.test(at)) {
                parts.add(at);
            }
        }
        for (int at = report.from; at < report.to; at++) {
            var line = lines.get(at);
            var why = figures.containsKey(at) || line.split("\\s+").length > MOST_WORDS
                    ? Optional.<String>empty()
                    : Standing.why(line);
            if (why.isEmpty() || isSaid(line)) {
                continue;
            }
            var analytes = BasisExcept.subjects(line);
            int own = at;
            if (!analytes.isEmpty()) {
                figures.forEach((place, some) -> {
                    if (report.from <= place
                            && place < report.to
                            && some.stream().anyMatch(analytes::contains)) {
                        whys.putIfAbsent(place, why.get());
                    }
                });
                continue;
            }
            var named = TOKEN.matcher(line)
                    .results()
                    .map(token -> token.group())
                    .flatMap(token -> parts.stream()
                            .filter(part -> part != own && lines.get(part).contains(token)))
                    .distinct()
                    .toList();
            boolean isAll = OF_ALL.matcher(line).find() || parts.size() < 2 || isApart(report, parts, at);
            if (!named.isEmpty() && !OF_ALL.matcher(line).find()) {
                named.forEach(part -> close(part, next(parts, part, report.to), why.get()));
            } else if (isAll) {
                close(report.from, report.to, why.get());
            } else {
                int part = parts.stream()
                        .filter(from -> from <= own)
                        .reduce((a, b) -> b)
                        .orElse(report.from);
                close(part, next(parts, part, report.to), why.get());
            }
        }
    }

    /** Over the first sample, or under a gap at the end: of all of them. */
    private boolean isApart(Report report, List<Integer> parts, int at) {
        boolean isAtTheFoot = at > report.from
                && lines.get(at - 1).isBlank()
                && figures.keySet().stream().noneMatch(place -> place > at && place < report.to);
        return parts.stream().noneMatch(part -> part <= at) || isAtTheFoot;
    }

    private static int next(List<Integer> parts, int part, int end) {
        return parts.stream().filter(from -> from > part).findFirst().orElse(end);
    }

    private void close(int from, int to, String why) {
        for (int at = from; at < to; at++) {
            whys.putIfAbsent(at, why);
        }
    }

    /** Whether somebody said that what calls itself preliminary counts; it is asked, and waits until then. */
    private boolean isSaid(String line) {
        if (Standing.of(line) != Standing.PRELIMINARY) {
            return false;
        }
        var written = REPORT + first(line);
        var said = words.column(written).orElse(null);
        asked.add(new Understood.Column(written, first(line), said, false));
        return said != null && said != ColumnIs.LEFT_OUT;
    }
}
