package haywright.app.report;

import haywright.app.document.Fingerprint;
import haywright.app.document.Patch;
import haywright.app.document.RanchDocument;
import haywright.app.words.Show;
import haywright.app.words.Version;
import haywright.cattle.herd.Group;
import haywright.diet.LeftOut;
import haywright.feeding.Offers;
import haywright.feeding.Rations;
import haywright.outlook.Yard;
import haywright.ranch.Letter;
import haywright.ranch.Ranch;
import haywright.workings.Refused;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The one page for the person who feeds a group: what to do, why, how much, what to watch for, what it rests on.
 *
 * @param ranch as it stands now, which may have moved on since the letter was worked out
 * @param letter its figures and words as they were worked out or written
 */
public record FeedLetter(Ranch ranch, Group group, Letter letter) {
    /** {@code Tuesday, December 1, 2026}. */
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("EEEE, MMMM d, uuuu", Locale.US);

    private static final DateTimeFormatter WEEKDAY = DateTimeFormatter.ofPattern("EEEE, MMMM d", Locale.US);

    private static final double LARGEST_POINTS = 13;
    /** Below this nobody reads it in a cab. */
    private static final double SMALLEST_POINTS = 10;

    /** A part of the page that is made of words; each can be rewritten. */
    public enum Part {
        WHAT_TO_DO("What to do"),
        WHY("Why"),
        WATCH_FOR("Stop and call"),
        RESTS_ON("Based on"),
        /** Always the adviser's; nothing is worked out for it. */
        OWN("From your adviser");

        private final String title;

        Part(String title) {
            this.title = title;
        }

        public String title() {
            return title;
        }

        public String id() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /** The letter that was kept, or a new one for this day. */
    public static FeedLetter of(Ranch ranch, Group group, LocalDate day) {
        return of(new Offers(new Rations(ranch, day), group));
    }

    /** The same of what is worked out already. */
    public static FeedLetter of(Offers offers) {
        var ranch = offers.yard().ranch();
        var group = offers.group();
        var kept = ranch.letters().get(group.id());
        return kept == null ? workedOut(offers) : new FeedLetter(ranch, group, kept);
    }

    /** Figures of this day; whatever somebody wrote on an earlier letter stays. */
    public static FeedLetter workedOut(Ranch ranch, Group group, LocalDate day) {
        return workedOut(new Offers(new Rations(ranch, day), group));
    }

    /** The same of what is worked out already. */
    public static FeedLetter workedOut(Offers offers) {
        var ranch = offers.yard().ranch();
        var group = offers.group();
        var day = offers.yard().day();
        var says = LetterWords.of(offers);
        var kept = ranch.letters().get(group.id());
        var letter = new Letter(
                group.id(),
                day,
                Version.TEXT,
                fingerprint(ranch, group),
                says.table(),
                says.figures(),
                kept == null ? Map.of() : kept.words());
        return new FeedLetter(ranch, group, letter);
    }

    /** Whether the ranch keeps it: until then it is worked out anew each time it is looked at. */
    public boolean isKept() {
        return letter.equals(ranch.letters().get(group.id()));
    }

    /** Whether something that the figures rest on has changed since they were worked out. */
    public boolean isStale() {
        return !letter.inputsSha256().equals(fingerprint(ranch, group));
    }

    /** Of everything the figures rest on. */
    private static String fingerprint(Ranch ranch, Group group) {
        var document = new RanchDocument().tree(ranch);
        var json = document.objectNode();
        for (var path : List.of(
                "groups/" + group.id(),
                "fed_now/" + group.id(),
                "wishes/" + group.id(),
                "lots",
                "reports",
                "feeds_for_sale",
                "settings",
                "outfit",
                "waters",
                "energy_picks",
                "contacts",
                "pens/" + group.id())) {
            json.set(path, Patch.at(document, path));
        }
        return Fingerprint.sha256(json.put("version", Version.TEXT));
    }

    /** What stands first on the paper of a letter that is out of date, the worst first; empty for others. */
    public List<String> notices() {
        if (!isStale()) {
            return List.of();
        }
        var says = new ArrayList<>(stops());
        says.add("Changed since %s: do not feed by this letter before it is worked out again."
                .formatted(Show.date(letter.made())));
        return says;
    }

    /** Feeds of its table that may not be fed as the ranch is now. */
    public List<String> stops() {
        try {
            var out = new Yard(ranch, letter.made()).alone(group).diet().leftOut();
            return Cautions.keepOut(out.stream().filter(this::isFed).toList()).stream()
                    .map(line -> "Stop. " + line)
                    .toList();
        } catch (Refused refused) {
            return List.of(); // that it is out of date is said all the same
        }
    }

    private boolean isFed(LeftOut out) {
        var name = out.feed().name();
        return letter.table().stream()
                .anyMatch(row ->
                        row.where().equals(LetterWords.BOUGHT) ? name.startsWith(row.feed()) : name.equals(row.feed()));
    }

    /** What a part says: what somebody wrote, else what was worked out. */
    public String words(Part part) {
        return letter.words().getOrDefault(part.id(), figure(part));
    }

    /** One sentence or note a line. */
    public List<String> lines(Part part) {
        return words(part).lines().map(String::strip).filter(l -> !l.isEmpty()).toList();
    }

    /** What must not be done stands out, whoever wrote it. */
    public boolean forbids(String line) {
        return Stream.of("Do not ", "Stop ").anyMatch(line::startsWith) || line.contains("Never ");
    }

    /** What was worked out for a part, whatever was written since. */
    public String figure(Part part) {
        return letter.figures().getOrDefault(part.id(), "");
    }

    public boolean isRewritten(Part part) {
        return letter.words().containsKey(part.id());
    }

    /** With a part in somebody's own words; emptied, or the same as what was worked out, it is worked out again. */
    public FeedLetter with(Part part, String words) {
        var changed = new LinkedHashMap<>(letter.words());
        var said = words.strip().replace("\r\n", "\n");
        if (said.isEmpty() || said.equals(figure(part))) {
            changed.remove(part.id());
        } else {
            changed.put(part.id(), said);
        }
        return new FeedLetter(
                ranch,
                group,
                new Letter(
                        letter.group(),
                        letter.made(),
                        letter.version(),
                        letter.inputsSha256(),
                        letter.table(),
                        letter.figures(),
                        changed));
    }

    // What stands at the head of the page, as it was when the figures were worked out

    public String name() {
        return letter.figures().getOrDefault(LetterWords.NAME, group.name());
    }

    /** What was said in brackets behind the name; empty for most. */
    public String nameNote() {
        return letter.figures().getOrDefault(LetterWords.NAME_NOTE, "");
    }

    public String ranchName() {
        return letter.figures().getOrDefault(LetterWords.RANCH, ranch.name());
    }

    public String head() {
        return letter.figures().getOrDefault(LetterWords.HEAD, "");
    }

    /** The same in few words, as it is printed. */
    public String figured() {
        return letter.figures().getOrDefault(LetterWords.FIGURED, mild());
    }

    /** Mark, gate and bunk; empty where nobody said. */
    public String pen() {
        return letter.figures().getOrDefault(LetterWords.PEN, "");
    }

    /** Until when it is good, and what needs a call before; empty in a letter kept before it was said. */
    public String valid() {
        return letter.figures().getOrDefault(LetterWords.VALID, "");
    }

    /** What stands over the last column of the table. */
    public String loaded() {
        return letter.figures().getOrDefault(LetterWords.LOADED, "Whole group");
    }

    /** What moved its figures, typed or taken, in words; empty in a letter kept before they were said. */
    public String mild() {
        return letter.figures().getOrDefault(LetterWords.MILD, "");
    }

    public String day() {
        return DAY.format(letter.made());
    }

    public boolean isBought(Letter.Row row) {
        return row.where().equals(LetterWords.BOUGHT);
    }

    /** Without the year: whoever feeds reads few numbers. */
    public String weekday() {
        return WEEKDAY.format(letter.made());
    }

    /** What stands over a part; the adviser's own lines carry the adviser's name. */
    public String title(Part part) {
        var adviser = letter.figures().getOrDefault(LetterWords.ADVISER, "");
        return part == Part.OWN && !adviser.isBlank() ? "From " + adviser : part.title();
    }

    /** {@code feed-letter-mature-cows-2026-12-01-a4.pdf}. */
    public String fileName(Paper.Size size) {
        return "feed-letter-%s-%s-%s.pdf".formatted(plain(name()), letter.made(), size.id());
    }

    /** A group's name as part of a file's. */
    static String plain(String name) {
        var plain = name.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-").replaceAll("^-+|-+$", "");
        return plain.isEmpty() ? "group" : plain;
    }

    /** Laboratory reports that what is fed rests on: {@code Meadow hay: Tin Valley Laboratory, sample 1042, Oct 14, 2026}. */
    public List<String> reports(Offers offers) {
        return LetterRecord.reports(offers);
    }

    /** What somebody decided in place of the usual. */
    public List<String> overrides() {
        return LetterRecord.overrides(this);
    }

    /** {@code feed-letter-mature-cows-2026-12-01.html}. */
    public String phoneName() {
        return fileName(Paper.Size.LETTER).replaceFirst("-letter\\.pdf$", ".html");
    }

    /** One file with everything in it, for a phone. */
    public String phonePage() {
        return Paper.text("haywright/app/report/letterPhone.jte", this);
    }

    /**
     * For a text message: what can kill, then what to feed, until when, the change and the cold, whom to call. Whatever does
     * not fit the page of a message is left to the letter.
     */
    public String message() {
        var says = new ArrayList<String>();
        says.add("%s, %s, %s.".formatted(ranchName(), name(), head()));
        says.addAll(notices());
        figure(LetterWords.DEADLY).forEach(says::add);
        Stream.of(Part.WHAT_TO_DO, Part.OWN)
                .flatMap(part -> lines(part).stream())
                .filter(line -> forbids(line) && !line.equals(Loads.NOT_ZEROED))
                .forEach(says::add);
        letter.table()
                .forEach(row -> says.add("%s %s a head (%s%s)."
                        .formatted(
                                row.feed(),
                                row.aHead(),
                                loaded().startsWith("Scale")
                                                && !row.forTheGroup().equals("free choice")
                                        ? "load to "
                                        : "",
                                row.forTheGroup())));
        lines(Part.WHAT_TO_DO).stream().filter(Loads.NOT_ZEROED::equals).forEach(says::add);
        says.add(valid());
        figure(LetterWords.AFTER).forEach(says::add);
        lines(Part.WATCH_FOR).stream().limit(2).forEach(says::add);
        says.removeIf(String::isBlank);
        return says.stream().distinct().collect(Collectors.joining(" "));
    }

    /** Of the message; empty in a letter kept before it was said. */
    private Stream<String> figure(String key) {
        return letter.figures().getOrDefault(key, "").lines();
    }

    /**
     * On one page, in smaller print if it must be; only words that somebody added without end run onto a second one.
     */
    public Paper paper(Paper.Size size) {
        return Paper.onOnePage(LARGEST_POINTS, SMALLEST_POINTS, points -> paper(size, points));
    }

    private Paper paper(Paper.Size size, double points) {
        return Paper.of(
                "Feed letter: " + name() + ", " + ranchName(),
                "What to feed, why, and what to watch for",
                "haywright/app/report/feedLetter.jte",
                this,
                size,
                points,
                letter.made());
    }
}
